/** What a fastener gets when the tool shows a value, with or without an adapter between them. */
import { parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { convert } from '@/lib/domain/base/units';
import { deliveredFromSetting } from './adapter';
import type { Adapter, Tool } from './tool';

/** In the unit of `shown`; null when an adapter is on and the tool's length is not known (D19). */
export const deliveredAt = (shown: Exact, tool: Tool, adapter: Adapter | null): Exact | null => {
  if (adapter === null) return shown;
  if (tool.length === undefined) return null;
  const length = parseDecimal(tool.length.value);
  const given = parseDecimal(adapter.extension.value);
  const extension = given === null ? null : convert(given, adapter.extension.unit, tool.length.unit);
  if (length === null || extension === null) return null;
  return deliveredFromSetting(shown, { length, extension, angle: adapter.angle });
};
