/** Judges what is typed, by the rulebook's own torque rules (D46): exact decimals, no second opinion. */
import { parseDecimal, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Refusal } from '@/lib/domain/base/refusals';
import { convert } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';
import { fromExactText } from '@/lib/domain/car/joint';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { placeOf } from '@/lib/domain/plan/window';
import { judgeEvidence } from '@/lib/domain/torque/evidence';
import type { EvidenceFacts, TorqueEvidence } from '@/lib/domain/torque/evidence';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';
import { settingFor } from '@/lib/wire/views/aim';
import type { JointView } from '@/lib/wire/views/sign-off';
import type { Ask } from './asks';
import { asksOf } from './asks';
import { ruledJoint, windowOf } from './ruled-joint';
import type { Sitting } from './sitting';

/** The bench: which joint, with what, judged when. */
export interface Bench {
  readonly view: JointView;
  readonly joint: CompiledJoint;
  readonly tool: Tool | null;
  readonly adapter: Adapter | null;
  readonly day: string;
  readonly judgedAt: string;
}

export const benchOf = (
  view: JointView,
  tool: Tool | null,
  adapter: Adapter | null,
  moment: Pick<EvidenceFacts, 'day' | 'judgedAt'>,
): Bench => ({ view, joint: ruledJoint(view), tool, adapter, ...moment });

const factsOf = ({ tool, adapter, day, judgedAt }: Bench): EvidenceFacts => ({
  tool,
  adapter,
  day,
  judgedAt,
});

/** The unit that the tool shows. */
export const shownUnit = ({ tool }: Bench, sitting: Sitting): Unit | null =>
  sitting.unit ?? tool?.unit ?? null;

/** Everything given so far, as the final would claim it. */
export const evidenceOf = (bench: Bench, sitting: Sitting): TorqueEvidence => {
  const { view, tool, adapter } = bench;
  const { given } = sitting;
  if (view.method === 'sequence')
    return {
      ...(tool === null ? {} : { tool: tool.id }),
      steps: Object.fromEntries(
        view.sequence.flatMap(({ step }, index) => {
          const text = given[`step:${String(index)}`];
          return text === undefined ? [] : [[step, text]];
        }),
      ),
    };
  const asks = asksOf(view, tool?.kind ?? null);
  if (tool === null || asks.length === 0) return {};
  const of = (kind: Ask['kind']): readonly string[] =>
    asks.flatMap((ask) => (ask.kind === kind ? (given[ask.id] ?? []) : []));
  const readings = of('reading');
  const drags = of('drag');
  const angles = of('angle');
  return {
    tool: tool.id,
    ...(adapter === null ? {} : { adapter: adapter.id }),
    ...(sitting.unit === null ? {} : { unit: sitting.unit }),
    ...(given.setting === undefined ? {} : { setting: given.setting }),
    passes: passesOf(bench, asks, sitting),
    ...(tool.kind === 'click' ? {} : { readings }),
    ...(view.method === 'prevailing' ? { drags } : {}),
    ...(view.method === 'angle' ? { angles } : {}),
    ...(sitting.unitConfirmed ? { unitConfirmed: true } : {}),
  };
};

/** Fasteners in the order they were taken, pass by pass; a pass that was not begun is left out. */
const passesOf = (
  { view }: Bench,
  asks: readonly Ask[],
  { given }: Sitting,
): readonly (readonly number[])[] =>
  Array.from({ length: view.passes }, (_, index) => index + 1)
    .map((pass) =>
      asks.flatMap((ask) => {
        const isOfPass =
          (ask.kind === 'tap' && ask.pass === pass) || (ask.kind === 'reading' && pass === view.passes);
        return isOfPass && given[ask.id] !== undefined ? [ask.fastener] : [];
      }),
    )
    .filter((taken) => taken.length > 0);

/** What the final would be refused for on its evidence; none = it can be signed. */
export const judgeAll = (bench: Bench, sitting: Sitting): readonly Refusal[] =>
  judgeEvidence(bench.joint, evidenceOf(bench, sitting), factsOf(bench)).refusals;

export type Verdict =
  | { readonly is: 'unreadable' }
  /** It would fit if two units were mixed up: somebody must say which the tool shows. */
  | { readonly is: 'unit-doubtful'; readonly units: readonly Unit[] }
  /** The tool can't show it. */
  | { readonly is: 'beyond-tool'; readonly range: string }
  | {
      readonly is: 'below' | 'inside' | 'above';
      /** What the fastener got, in the window's unit. */
      readonly delivered: Exact | null;
      /** How far outside, in the unit that was read; null inside. */
      readonly by: Exact | null;
    };

/** What is to be said of one value. The others given so far don't matter, but for the drag of the same fastener. */
export const judgeValue = (bench: Bench, sitting: Sitting, ask: Ask, text: string): Verdict => {
  const value = parseDecimal(text);
  if (value === null) return { is: 'unreadable' };
  switch (ask.kind) {
    case 'tap':
      return { is: 'inside', delivered: null, by: null };
    case 'drag':
      return value.num < 0n ? { is: 'unreadable' } : { is: 'inside', delivered: value, by: null };
    case 'step':
      return inWindow(bench.view.sequence[ask.index]?.window ?? null, value);
    case 'angle':
      return inWindow(bench.view.angle, value);
    case 'setting':
      return judgeTorque(bench, sitting, bench.view.order[0] ?? 1, { setting: text }, value);
    case 'reading': {
      const drag = sitting.given[`drag:${String(ask.fastener)}`];
      const drags = bench.view.method === 'prevailing' ? { drags: [drag ?? '0'] } : {};
      return judgeTorque(bench, sitting, ask.fastener, { readings: [text], ...drags }, value);
    }
  }
};

const inWindow = (window: JointView['angle'], value: Exact): Verdict => {
  if (window === null) return { is: 'inside', delivered: value, by: null };
  const { low, high } = windowOf(window);
  const is = placeOf({ low, high }, value);
  const by =
    is === 'below' && low !== null
      ? subtract(low, value)
      : is === 'above' && high !== null
        ? subtract(value, high)
        : null;
  return { is, delivered: value, by };
};

/** One fastener put to the rules as if it were the whole joint. */
const judgeTorque = (
  bench: Bench,
  sitting: Sitting,
  fastener: number,
  shown: Pick<TorqueEvidence, 'setting' | 'readings' | 'drags'>,
  value: Exact,
): Verdict => {
  const alone: CompiledJoint = { ...bench.joint, fasteners: 1, order: [fastener], passes: 1, angle: null };
  const { refusals, delivered } = judgeEvidence(
    alone,
    {
      ...shown,
      passes: [[fastener]],
      ...(sitting.unit === null ? {} : { unit: sitting.unit }),
      unitConfirmed: sitting.unitConfirmed,
    },
    factsOf(bench),
  );
  const got = delivered?.[String(fastener)] ?? null;
  for (const { code, details } of refusals) {
    if (code === 'setting-outside-tool-range') return { is: 'beyond-tool', range: details.range };
    if (code === 'unit-doubtful')
      return { is: 'unit-doubtful', units: details.plausible.split(' and ') as Unit[] };
    if (code === 'reading-below' || code === 'reading-above')
      return {
        is: code === 'reading-below' ? 'below' : 'above',
        delivered: got,
        by: distance(bench, sitting, fastener, value),
      };
  }
  return { is: 'inside', delivered: got, by: null };
};

const distance = (bench: Bench, sitting: Sitting, fastener: number, shown: Exact): Exact | null => {
  const { low, high } = boundsOnTool(bench, sitting, fastener);
  if (low !== null && shown.num * low.den < low.num * shown.den) return subtract(low, shown);
  return high === null ? null : subtract(shown, high);
};

export interface Bounds {
  readonly low: Exact | null;
  readonly high: Exact | null;
  readonly aim: Exact | null;
}

/** The window as this tool shows it, with the drag of this fastener on top where it is measured. */
export const boundsOnTool = (bench: Bench, sitting: Sitting, fastener: number | null): Bounds => {
  const { tool, adapter, view } = bench;
  const unit = shownUnit(bench, sitting);
  if (view.specification.kind !== 'window' || tool === null || unit === null)
    return { low: null, high: null, aim: null };
  const { window, aim } = view.specification;
  const text = fastener === null ? undefined : sitting.given[`drag:${String(fastener)}`];
  const read = text === undefined ? null : parseDecimal(text);
  const drag = read === null ? null : convert(read, unit, window.unit);
  const onTool = (exactText: string | null): Exact | null => {
    if (exactText === null) return null;
    const value = fromExactText(exactText);
    const whole = drag === null ? value : subtract(value, { num: -drag.num, den: drag.den });
    return settingFor(whole, window.unit, tool, adapter, unit);
  };
  return { low: onTool(window.low), high: onTool(window.high), aim: onTool(aim) };
};
