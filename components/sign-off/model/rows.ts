/** The sitting as rows: each value with what it means at the fastener, in the order of the wrench. */
import { parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { asksOf } from './asks';
import type { Ask } from './asks';
import { boundsOnTool, judgeValue, shownUnit } from './judge';
import type { Bench, Bounds, Verdict } from './judge';
import { isOver } from './moves';
import { windowOf } from './ruled-joint';
import type { Sitting } from './sitting';
import { askUnit, capital, fixed, placesFor } from './words';

export interface RowData {
  readonly ask: Ask;
  readonly head: string;
  readonly text: string | null;
  readonly scale: Bounds | null;
  readonly state: 'todo' | 'now' | 'in' | 'below' | 'over';
  readonly says: string;
  readonly also: string;
  readonly name?: string;
  readonly mayCorrect: boolean;
}

export interface RowGroup {
  readonly heading: string;
  readonly unit: string;
  readonly isOnTool: boolean;
  readonly scale: Bounds | null;
  readonly rows: readonly RowData[];
}

/** Setting, readings, turns, steps: a table for each that the method has. */
export const rowGroups = (bench: Bench, sitting: Sitting, current: Ask | null): readonly RowGroup[] => {
  const asks = asksOf(bench.view, bench.tool?.kind ?? null);
  const { word } = bench.view;
  const group = (kind: Ask['kind'], heading: string): readonly RowGroup[] => {
    const mine = asks.filter((ask) => ask.kind === kind);
    const [first] = mine;
    if (first === undefined) return [];
    return [
      {
        heading,
        unit: kind === 'step' ? '' : askUnit(first, shownUnit(bench, sitting), bench.view),
        isOnTool: kind === 'reading' || kind === 'setting',
        scale: kind === 'step' ? null : scaleOf(bench, sitting, first, bench.view.method !== 'prevailing'),
        rows: mine.map((ask) => rowOf(bench, sitting, ask, current)),
      },
    ];
  };
  return [
    ...group('setting', 'Tool'),
    ...group('reading', headingFor(word)),
    ...group('angle', headingFor(word)),
    ...group('step', 'Step'),
  ];
};

/** Over the column of the heads; the long word has no room there. */
export const headingFor = ({ one }: Bench['view']['word']): string =>
  one === 'fastener' ? 'No.' : capital(one);

const scaleOf = (bench: Bench, sitting: Sitting, ask: Ask, isShared = true): Bounds | null => {
  if (ask.kind === 'setting') return boundsOnTool(bench, sitting, null);
  if (ask.kind === 'reading') return isShared ? boundsOnTool(bench, sitting, ask.fastener) : null;
  const window = ask.kind === 'angle' ? bench.view.angle : stepWindow(bench, ask);
  if (window === null) return null;
  const { low, high, target } = windowOf(window);
  return { low, high, aim: target };
};

const stepWindow = ({ view }: Bench, ask: Ask) =>
  ask.kind === 'step' ? (view.sequence[ask.index]?.window ?? null) : null;

const rowOf = (bench: Bench, sitting: Sitting, ask: Ask, current: Ask | null): RowData => {
  const text = sitting.given[ask.id] ?? null;
  const isNow = ask.id === current?.id || (isDragOf(current, ask) && text === null);
  const base = {
    ask,
    head: headOf(ask),
    scale: scaleOf(bench, sitting, ask),
    ...nameFor(bench, sitting, ask),
  };
  if (text === null)
    return {
      ...base,
      text: null,
      state: isNow ? 'now' : 'todo',
      says: isNow ? 'now' : 'to come',
      also: '',
      mayCorrect: false,
    };
  const mayCorrect = !isOver(sitting, ask);
  if (text === 'done') return { ...base, text: '', state: 'in', says: 'done', also: '', mayCorrect };
  const verdict = judgeValue(bench, sitting, ask, text);
  return { ...base, text, ...said(bench, verdict, base.scale, ask), mayCorrect };
};

const isDragOf = (current: Ask | null, ask: Ask): boolean =>
  current?.kind === 'drag' && ask.kind === 'reading' && current.fastener === ask.fastener;

const headOf = (ask: Ask): string => {
  if (ask.kind === 'setting') return 'set';
  return ask.kind === 'step' ? String(ask.index + 1) : String(ask.fastener);
};

const nameFor = ({ view }: Bench, { given }: Sitting, ask: Ask): { readonly name?: string } => {
  if (ask.kind === 'step') return { name: view.sequence[ask.index]?.step ?? '' };
  if (ask.kind !== 'reading' || view.method !== 'prevailing') return {};
  return { name: `drag ${given[`drag:${String(ask.fastener)}`] ?? '–'}` };
};

const said = (
  bench: Bench,
  verdict: Verdict,
  scale: Bounds | null,
  ask: Ask,
): Pick<RowData, 'state' | 'says' | 'also'> => {
  if (verdict.is === 'unit-doubtful') return { state: 'below', says: 'which unit?', also: '' };
  if (verdict.is === 'unreadable' || verdict.is === 'beyond-tool')
    return { state: 'below', says: 'not readable', also: '' };
  const places = scale === null ? 1 : placesFor(scale);
  const also = atFastener(bench, verdict.delivered, ask);
  if (verdict.is === 'inside') return { state: 'in', says: 'in band', also };
  const by = verdict.by === null ? '' : ` ${awayFrom(verdict.by, places)}`;
  return verdict.is === 'below'
    ? { state: 'below', says: `under${by}`, also }
    : { state: 'over', says: `over${by}`, also };
};

/** Never rounded to nothing: what is out is out. */
const awayFrom = (by: Exact, places: number): string => {
  const text = fixed(by, places);
  return /[1-9]/.test(text) ? text : fixed(by, 6).replace(/0+$/, '');
};

/** `44.8 at the nut`; nothing where it is what was read. */
const atFastener = ({ view, tool, adapter }: Bench, delivered: Exact | null, ask: Ask): string => {
  if (delivered === null || view.specification.kind !== 'window') return '';
  if (ask.kind !== 'reading' && ask.kind !== 'setting') return '';
  const { unit } = view.specification.window;
  const isSame = adapter === null && unit === tool?.unit && view.method !== 'prevailing';
  if (isSame) return '';
  return `${fixed(delivered, 1)}${unit === tool?.unit ? '' : ` ${unit}`} at ${view.word.one}`;
};

/** What a reading came to, `48.7 N·m at the nut`, for the words about one that is over. */
export const deliveredWords = (bench: Bench, sitting: Sitting, ask: Ask, text: string): string => {
  if (parseDecimal(text) === null) return text;
  const verdict = judgeValue(bench, { ...sitting, unitConfirmed: true }, ask, text);
  if (!('delivered' in verdict) || verdict.delivered === null) return text;
  return toDecimalText(verdict.delivered, 3);
};
