/** The two numbers at the top: what the fastener must get, and what goes on the tool for what is done next. */
import { toDecimalText } from '@/lib/domain/base/exact';
import { fromExactText } from '@/lib/domain/car/joint';
import { windowText } from '@/lib/domain/plan/window';
import type { Unit } from '@/lib/domain/base/units';
import { formulaFor } from '@/lib/wire/views/aim';
import type { SignOffView } from '@/lib/wire/views/sign-off';
import { passOf } from './asks';
import type { Ask } from './asks';
import { boundsOnTool, shownUnit } from './judge';
import type { Bench } from './judge';
import { windowOf } from './ruled-joint';
import type { Sitting } from './sitting';
import { fixed, placesFor } from './words';

export interface Want {
  readonly big: string;
  readonly small: string;
  readonly below: string;
}

/** `45 ± 3 N·m`: the first number large, the rest beside it. */
const split = (text: string): Pick<Want, 'big' | 'small'> => {
  const [, big, small] = /^([\d.]+)\s*(.*)$/.exec(text) ?? [];
  return big === undefined ? { big: text, small: '' } : { big, small: small ?? '' };
};

export const wantOf = ({ joint, car }: SignOffView): Want => {
  const plan = `plan ${car.revision}`;
  const { specification } = joint;
  if (joint.method === 'sequence')
    return { big: String(joint.sequence.length), small: 'steps, in order', below: plan };
  if (specification.kind === 'no-value-published')
    return { big: 'Firm', small: 'by hand tool', below: `no value is published, ${plan}` };
  if (specification.kind === 'no-value-yet')
    return { big: 'No value yet', small: '', below: `${plan}: may be snug, not final` };
  const window = windowOf(specification.window);
  const text = windowText(window);
  return { ...split(window.text), below: text === window.text ? plan : `${text}, ${plan}` };
};

export interface SetWords {
  readonly label: string;
  readonly big: string;
  readonly unit: string;
  readonly below: string;
}

/** A click tool is set to it, any other is read at it (D60). Null where nothing goes on a tool. */
export const setOf = (bench: Bench, sitting: Sitting, ask: Ask | null): SetWords | null => {
  const { view, tool } = bench;
  const unit = shownUnit(bench, sitting);
  if (view.specification.kind !== 'window' || tool === null || unit === null) return null;
  if (ask?.kind === 'angle' && view.angle !== null) {
    const { big, small } = split(view.angle.text);
    return { label: 'Now turn on by', big, unit: small, below: 'from where the seat torque left it' };
  }
  const fastener = ask !== null && (ask.kind === 'reading' || ask.kind === 'drag') ? ask.fastener : null;
  const bounds = boundsOnTool(bench, sitting, fastener);
  const label = setLabel(bench, ask);
  if (bounds.aim === null) return { label, big: '–', unit, below: 'nobody can say with this adapter' };
  const big = fixed(bounds.aim, placesFor(bounds)).replace(/\.0+$/, '');
  return { label, big, unit, below: belowWords(bench, sitting, ask, unit) };
};

/** For a pass before the last the plan names no value, so that the number is told to be the last one's. */
const setLabel = ({ view, tool }: Bench, ask: Ask | null): string => {
  const label = tool?.kind === 'click' ? 'Set the tool to' : 'Read the tool at';
  if (ask?.kind === 'drag') return 'After the drag, read at';
  const isEarly = ask?.kind === 'tap' && passOf(ask, view) < view.passes && tool?.kind !== 'click';
  return isEarly ? `In pass ${String(view.passes)}, read at` : label;
};

const belowWords = (bench: Bench, { given }: Sitting, ask: Ask | null, shown: Unit): string => {
  const { view, tool, adapter } = bench;
  if (ask?.kind === 'drag')
    return `first turn ${view.word.one} ${String(ask.fastener)} down and read its drag`;
  if (ask?.kind === 'tap' && passOf(ask, view) < view.passes)
    return tool?.kind === 'click'
      ? `pass ${String(ask.pass)} of ${String(view.passes)}`
      : `pass ${String(ask.pass)} now: short of that, all alike; the plan names no value`;
  if (view.specification.kind !== 'window' || tool === null) return '';
  const { window, aim } = view.specification;
  const { high } = windowOf(window);
  if (view.slot && high !== null)
    return `then on to the next slot, never past ${toDecimalText(high)} ${window.unit}`;
  const drag = ask?.kind === 'reading' ? given[`drag:${String(ask.fastener)}`] : undefined;
  return [
    drag === undefined ? '' : `with ${drag} ${shown} of drag on top`,
    formulaFor(fromExactText(aim), window.unit, tool, adapter, shown),
  ]
    .filter((part) => part !== '')
    .join('; ');
};
