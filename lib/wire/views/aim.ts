/** What a tool must show for a fastener to get a value, and the sum behind it, for people to check. */
import { add, divide, exact, parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { convert } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';
import type { Window } from '@/lib/domain/plan/window';
import { settingForDelivered } from '@/lib/domain/torque/adapter';
import type { Lever } from '@/lib/domain/torque/adapter';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';

const leverOf = (tool: Tool, adapter: Adapter): Lever | null => {
  if (tool.length === undefined) return null;
  const length = parseDecimal(tool.length.value);
  const given = parseDecimal(adapter.extension.value);
  const extension = given === null ? null : convert(given, adapter.extension.unit, tool.length.unit);
  return length === null || extension === null ? null : { length, extension, angle: adapter.angle };
};

/** In `shown`, the unit that the tool shows. Null where nobody can say: no length on record, or no torque. */
export const settingFor = (
  value: Exact,
  unit: Unit,
  tool: Tool,
  adapter: Adapter | null,
  shown: Unit = tool.unit,
): Exact | null => {
  const own = convert(value, unit, shown);
  if (own === null || adapter === null) return own;
  const lever = leverOf(tool, adapter);
  return lever === null ? null : settingForDelivered(own, lever);
};

/** `36 lbf·ft = 48.81 N·m`, `45 × 362 / (362 + 38) = 40.725`; empty where the tool shows the plan's own number. */
export const formulaFor = (
  value: Exact,
  unit: Unit,
  tool: Tool,
  adapter: Adapter | null,
  shown: Unit = tool.unit,
): string => {
  const own = convert(value, unit, shown);
  if (own === null) return '';
  const converted = unit === shown ? [] : [`${equal(value)} ${unit} ${sign(own)} ${equal(own)} ${shown}`];
  const lever = adapter === null ? null : leverOf(tool, adapter);
  const setting = lever === null ? null : settingForDelivered(own, lever);
  if (lever === null || setting === null) return converted.join('');
  const length = equal(lever.length);
  const reach =
    lever.angle === 0
      ? `${length} + ${equal(lever.extension)}`
      : `${length} + ${equal(lever.extension)} × cos ${String(lever.angle)}°`;
  return [...converted, `${equal(own)} × ${length} / (${reach}) ${sign(setting)} ${equal(setting)}`].join(
    ', ',
  );
};

const PLACES = 3;
const equal = (value: Exact): string => toDecimalText(value, PLACES);
/** An equals sign is not put where a digit was dropped. */
const sign = ({ num, den }: Exact): string => ((num * 10n ** BigInt(PLACES)) % den === 0n ? '=' : '≈');

/** What is aimed at: the target, else the middle, else the one end there is; for a castle nut the low end. */
export const aimOf = (
  { low, high, target }: Pick<Window, 'low' | 'high' | 'target'>,
  slot = false,
): Exact | null => {
  if (slot && low !== null) return low;
  if (target !== null) return target;
  if (low !== null && high !== null) return divide(add(low, high), exact(2));
  return low ?? high;
};
