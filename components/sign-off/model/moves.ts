/** What can happen in a sitting: a value is entered, a fastener is done, the last is taken back. Pure. */
import type { Unit } from '@/lib/domain/base/units';
import { asksOf } from './asks';
import type { Ask, ValueAsk } from './asks';
import { judgeValue, shownUnit } from './judge';
import type { Bench, Verdict } from './judge';
import type { OverReading, Sitting } from './sitting';

/** More than any torque has; what is longer is a slip. */
const LONGEST = 8;

/** Figures and one point, as they come from keys or a keyboard; a comma becomes a point. */
export const cleaned = (text: string): string => {
  const [whole = '', ...rest] = text
    .replace(/,/g, '.')
    .replace(/[^0-9.]/g, '')
    .split('.');
  return (rest.length === 0 ? whole : `${whole}.${rest.join('')}`).slice(0, LONGEST);
};

export const type = (sitting: Sitting, text: string): Sitting => ({ ...sitting, typed: cleaned(text) });

/** `.5` and `5.` as people type them; the rulebook reads neither. */
const completed = (typed: string): string =>
  typed === '.' ? '' : typed.replace(/^\./, '0.').replace(/\.$/, '');

export const isOver = (sitting: Sitting, ask: Ask): boolean =>
  sitting.over.some((each) => each.ask === ask.id);

/** Done, and with a value where it needs one. */
export const isSettled = (bench: Bench, sitting: Sitting, ask: Ask): boolean => {
  const text = sitting.given[ask.id];
  if (text === undefined || isOver(sitting, ask)) return false;
  if (ask.kind === 'tap' || text === DONE) return true;
  return judgeValue(bench, sitting, ask, text).is === 'inside';
};

export const DONE = 'done';

/** The one that the keys write for: what is being corrected, else the first that is open; null = all are done. */
export const currentAsk = (bench: Bench, sitting: Sitting): Ask | null => {
  const asks = asksOf(bench.view, bench.tool?.kind ?? null);
  const corrected = asks.find(({ id }) => id === sitting.correcting);
  return corrected ?? asks.find((ask) => !isSettled(bench, sitting, ask)) ?? null;
};

export type Entered =
  | { readonly is: 'taken'; readonly sitting: Sitting; readonly verdict: Verdict }
  | { readonly is: 'not-taken'; readonly verdict: Verdict }
  | { readonly is: 'over'; readonly sitting: Sitting; readonly over: OverReading };

/** What a warning needs besides the reading, should there be one. */
export interface Made {
  readonly id: string;
  readonly doneAt: string;
  readonly car: string;
}

/** The value in the entry box is given for this ask. */
export const enter = (bench: Bench, sitting: Sitting, ask: ValueAsk, made: Made): Entered => {
  const text = completed(sitting.typed);
  const verdict = judgeValue(bench, sitting, ask, text);
  if (verdict.is === 'unreadable' || verdict.is === 'unit-doubtful' || verdict.is === 'beyond-tool')
    return { is: 'not-taken', verdict };
  const given = { ...without(sitting, ask), [ask.id]: text };
  const after: Sitting = { ...sitting, given, typed: '', correcting: null };
  const unit = ask.kind === 'angle' ? (bench.view.angle?.unit ?? null) : shownUnit(bench, sitting);
  if (verdict.is === 'above' && (ask.kind === 'reading' || ask.kind === 'angle') && unit !== null) {
    const over = overReading(bench, ask, text, unit, made);
    return { is: 'over', sitting: { ...after, over: [...sitting.over, over] }, over };
  }
  return { is: 'taken', sitting: after, verdict };
};

const overReading = (
  { view, tool, adapter }: Bench,
  { id: ask, fastener }: Extract<Ask, { kind: 'reading' | 'angle' }>,
  reading: string,
  unit: Unit,
  { id, doneAt, car }: Made,
): OverReading => ({
  ask,
  fastener,
  reading,
  unit,
  id,
  doneAt,
  claim: {
    type: 'report-over-torque',
    car,
    joint: view.key,
    cycle: view.cycle,
    fastener,
    reading,
    unit,
    ...(tool === null ? {} : { tool: tool.id }),
    ...(adapter === null ? {} : { adapter: adapter.id }),
  },
  sent: false,
});

/** What no longer holds when this is given anew: taps made at another setting, a reading over another drag. */
const without = ({ given }: Sitting, ask: Ask): Sitting['given'] => {
  if (ask.kind === 'setting') return {};
  if (ask.kind !== 'drag') return given;
  return Object.fromEntries(Object.entries(given).filter(([id]) => id !== `reading:${String(ask.fastener)}`));
};

/** Done without a number: a fastener brought there in a pass, a step of a sequence. */
export const done = (sitting: Sitting, ask: Ask): Sitting => ({
  ...sitting,
  given: { ...sitting.given, [ask.id]: DONE },
  typed: '',
  correcting: null,
});

/** Goes to one that was given already, to give it anew. What is over stays as it was read. */
export const correct = (sitting: Sitting, ask: Ask): Sitting =>
  isOver(sitting, ask) || ask.kind === 'tap' ? sitting : { ...sitting, correcting: ask.id, typed: '' };

/** Takes back the last that was done; null where there is nothing, or only what is over. */
export const takeBack = (bench: Bench, sitting: Sitting): Sitting | null => {
  if (sitting.typed !== '' || sitting.correcting !== null) return { ...sitting, typed: '', correcting: null };
  const last = asksOf(bench.view, bench.tool?.kind ?? null)
    .filter((ask) => sitting.given[ask.id] !== undefined)
    .at(-1);
  if (last === undefined || isOver(sitting, last)) return null;
  return {
    ...sitting,
    given: Object.fromEntries(Object.entries(sitting.given).filter(([id]) => id !== last.id)),
  };
};

/**
 * Somebody says which unit the tool shows. What was read before was taken in the other one, so that it is read again;
 * a reading that is over stays over.
 */
export const sayUnit = (bench: Bench, sitting: Sitting, unit: Unit): Sitting => {
  const isSame = unit === shownUnit(bench, sitting);
  return {
    ...sitting,
    unit: unit === bench.tool?.unit ? null : unit,
    unitConfirmed: true,
    given: isSame
      ? sitting.given
      : Object.fromEntries(Object.entries(sitting.given).filter(([id]) => id.startsWith('tap:'))),
  };
};
