/**
 * What a final rests on, by method (design 4.4):
 *   click               the setting once, then one tap per fastener in pattern order; an indicating tool gives readings
 *   dial, beam, digital one reading per fastener
 *   prevailing          each fastener's drag as well; it is part of the reading and taken off before comparing
 *   angle               seat torque as above, then the turn of each fastener
 *   sequence            each step of the plan, done or with its value
 *   firm                nothing but the hand: only where no value is published
 */
import { compare, parseDecimal, subtract, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { convert, dimensionOf } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';
import type { Day, Instant, ToolId } from '@/lib/domain/base/vocabulary';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { placeOf, windowText } from '@/lib/domain/plan/window';
import { deliveredAt } from './delivered';
import { sequenceRefusals } from './sequence';
import { toolFitsMethod } from './tool';
import type { Adapter, Tool } from './tool';
import { trustRefusals } from './trust';
import { windowRefusals } from './window-refusals';

/** What was tightened, with what, and what the tool said. */
export interface TorqueEvidence {
  readonly tool?: ToolId;
  readonly adapter?: string;
  /** The unit that the tool shows; absent = the tool's own. */
  readonly unit?: Unit;
  /** Click: what it was set to. */
  readonly setting?: string;
  /** Fastener numbers in the order they were taken, one list for each pass; the last pass is judged. */
  readonly passes?: readonly (readonly number[])[];
  /** Aligned with the last pass. */
  readonly readings?: readonly string[];
  /** Prevailing torque: the drag of each, aligned likewise. */
  readonly drags?: readonly string[];
  /** Angle: the turn of each after the seat torque in `readings`. */
  readonly angles?: readonly string[];
  /** Sequence: each step's value, or `done`. */
  readonly steps?: Readonly<Record<string, string>>;
  /** The answer to "which unit does the tool show?": the unit given is right. */
  readonly unitConfirmed?: boolean;
}

/** The tool and the clock that the evidence is judged with. */
export interface EvidenceFacts {
  readonly tool: Tool | null;
  readonly adapter: Adapter | null;
  readonly day: Day;
  readonly judgedAt: Instant;
}

export interface Judged {
  readonly refusals: readonly Refusal[];
  /** What each fastener got, in the window's unit, by fastener number; null where no number belongs to the method. */
  readonly delivered: Readonly<Record<string, Exact>> | null;
}

/** Judges a final's evidence; every fault of it at once. */
export const judgeEvidence = (
  joint: CompiledJoint,
  evidence: TorqueEvidence,
  facts: EvidenceFacts,
): Judged => {
  const { specification, method } = joint;
  const at = joint.stateKey;
  const order = orderRefusals(joint, evidence);
  if (method === 'sequence')
    return {
      refusals: [
        ...sequenceRefusals(joint, evidence.steps ?? {}),
        ...(facts.tool === null ? [] : trust(facts.tool, facts)),
      ],
      delivered: null,
    };
  if (specification.kind === 'no-value-yet') return only(refuse('no-value-yet', { joint: at }));
  if (specification.kind === 'no-value-published' || method === 'firm')
    return evidence.tool === undefined
      ? { refusals: order, delivered: null }
      : only(refuse('method-does-not-fit', { joint: at, method: 'firm', given: `tool ${evidence.tool}` }));

  const { tool, adapter } = facts;
  if (tool === null) return only(refuse('tool-missing', { joint: at, method }));
  const about: Refusal[] = [...order, ...trust(tool, facts)];
  if (!toolFitsMethod(tool.kind, method))
    about.push(refuse('tool-does-not-fit', { tool: tool.id, kind: tool.kind, joint: at, method }));
  const unit = evidence.unit ?? tool.unit;
  if (dimensionOf(unit) !== dimensionOf(specification.window.unit))
    return {
      refusals: [...about, refuse('unit-does-not-fit', { unit, wanted: specification.window.unit })],
      delivered: null,
    };

  const shown = shownByFastener(joint, evidence, tool);
  const delivered: Record<string, Exact> = {};
  for (const { fastener, value } of shown.values) {
    about.push(...outsideRange(tool, value, unit));
    const got = deliveredAt(value, tool, adapter);
    const inUnit = got === null ? null : convert(got, unit, specification.window.unit);
    if (inUnit === null) {
      about.push(refuse('adapter-length-unknown', { tool: tool.id, adapter: adapter?.id ?? '' }));
      break;
    }
    delivered[String(fastener)] = inUnit;
  }
  const net = withoutDrag(joint, evidence, delivered, unit, specification.window.unit);
  about.push(...shown.refusals, ...net.refusals, ...angleRefusals(joint, evidence));
  about.push(
    ...windowRefusals(joint, specification.window, net.values, unit, evidence.unitConfirmed ?? false),
  );
  return { refusals: once(about), delivered: net.values };
};

const only = (refusal: Refusal): Judged => ({ refusals: [refusal], delivered: null });

/** A click tool gives the same refusal for each fastener: it is said once. */
const once = (refusals: readonly Refusal[]): readonly Refusal[] => {
  const seen = new Set<string>();
  return refusals.filter((refusal) => {
    const text = JSON.stringify(refusal);
    if (seen.has(text)) return false;
    seen.add(text);
    return true;
  });
};

/** Believed at all, and with uses left since its calibration. */
const trust = (tool: Tool, facts: EvidenceFacts): readonly Refusal[] => [
  ...trustRefusals(tool, facts),
  ...(tool.cycles !== undefined && tool.cycles.used >= tool.cycles.limit
    ? [refuse('tool-cycles-used-up', { tool: tool.id, cycles: tool.cycles.limit })]
    : []),
];

/** The passes as claimed. One fastener in one pass has only one order, so it need not be written. */
const passesOf = (joint: CompiledJoint, evidence: TorqueEvidence): readonly (readonly number[])[] =>
  evidence.passes ?? (joint.fasteners === 1 && joint.passes === 1 ? [[1]] : []);

const orderRefusals = (joint: CompiledJoint, evidence: TorqueEvidence): readonly Refusal[] => {
  if (joint.method === 'firm' && evidence.passes === undefined) return [];
  const passes = passesOf(joint, evidence);
  const at = joint.stateKey;
  if (passes.length < joint.passes)
    return [refuse('passes-missing', { joint: at, wanted: joint.passes, given: passes.length })];
  return passes.flatMap((given, index) =>
    given.length === joint.order.length && given.every((each, place) => each === joint.order[place])
      ? []
      : [refuse('pattern-not-followed', { joint: at, pass: index + 1, wanted: joint.order, given })],
  );
};

interface Shown {
  readonly values: readonly { readonly fastener: number; readonly value: Exact }[];
  readonly refusals: readonly Refusal[];
}

/** What the tool showed at each fastener of the last pass: a click tool's setting, or one reading each. */
const shownByFastener = (joint: CompiledJoint, evidence: TorqueEvidence, tool: Tool): Shown => {
  const last = passesOf(joint, evidence).at(-1) ?? [];
  if (tool.kind === 'click') {
    const value = parseDecimal(evidence.setting ?? '');
    if (evidence.setting === undefined) return missing(joint, 'the setting', 1, 0);
    if (value === null) return unreadable('setting', evidence.setting);
    return { values: last.map((fastener) => ({ fastener, value })), refusals: [] };
  }
  const readings = evidence.readings ?? [];
  if (readings.length !== last.length || readings.length === 0)
    return missing(joint, 'readings', joint.fasteners, readings.length);
  const values: { fastener: number; value: Exact }[] = [];
  for (const [index, text] of readings.entries()) {
    const value = parseDecimal(text);
    if (value === null) return unreadable(`reading ${String(index + 1)}`, text);
    values.push({ fastener: last[index] ?? index + 1, value });
  }
  return { values, refusals: [] };
};

const missing = (joint: CompiledJoint, what: string, wanted: number, given: number): Shown => ({
  values: [],
  refusals: [refuse('readings-missing', { joint: joint.stateKey, what, wanted, given })],
});

const unreadable = (field: string, text: string): Shown => ({
  values: [],
  refusals: [refuse('value-unreadable', { field, text, wanted: 'a number such as 45 or 45.2' })],
});

/** The gate on the tool is by what the tool shows, not by what the fastener gets (standards: adapters). */
const outsideRange = (tool: Tool, shown: Exact, unit: Unit): readonly Refusal[] => {
  const own = convert(shown, unit, tool.unit);
  const low = parseDecimal(tool.low);
  const high = parseDecimal(tool.high);
  if (own === null || low === null || high === null) return [];
  return compare(own, low) < 0 || compare(own, high) > 0
    ? [
        refuse('setting-outside-tool-range', {
          tool: tool.id,
          value: `${toDecimalText(own)} ${tool.unit}`,
          range: `${tool.low} to ${tool.high} ${tool.unit}`,
        }),
      ]
    : [];
};

/** Prevailing torque: the wrench shows drag and clamp together; only the rest clamps. */
const withoutDrag = (
  joint: CompiledJoint,
  evidence: TorqueEvidence,
  delivered: Readonly<Record<string, Exact>>,
  unit: Unit,
  wanted: Unit,
): { values: Readonly<Record<string, Exact>>; refusals: readonly Refusal[] } => {
  if (joint.method !== 'prevailing') return { values: delivered, refusals: [] };
  const drags = evidence.drags ?? [];
  const last = passesOf(joint, evidence).at(-1) ?? [];
  if (drags.length !== last.length)
    return { values: delivered, refusals: missing(joint, 'drags', joint.fasteners, drags.length).refusals };
  const values: Record<string, Exact> = {};
  for (const [index, text] of drags.entries()) {
    const drag = parseDecimal(text);
    const inUnit = drag === null ? null : convert(drag, unit, wanted);
    if (inUnit === null)
      return { values: delivered, refusals: unreadable(`drag ${String(index + 1)}`, text).refusals };
    const fastener = String(last[index] ?? index + 1);
    const got = delivered[fastener];
    if (got !== undefined) values[fastener] = subtract(got, inUnit);
  }
  return { values, refusals: [] };
};

const angleRefusals = (joint: CompiledJoint, evidence: TorqueEvidence): readonly Refusal[] => {
  const { angle } = joint;
  if (joint.method !== 'angle' || angle === null) return [];
  const angles = evidence.angles ?? [];
  if (angles.length !== joint.fasteners)
    return missing(joint, 'angles', joint.fasteners, angles.length).refusals;
  return angles.flatMap((text, index): readonly Refusal[] => {
    const value = parseDecimal(text);
    if (value === null) return unreadable(`angle ${String(index + 1)}`, text).refusals;
    if (placeOf(angle, value) === 'inside') return [];
    const step = `angle of fastener ${String(joint.order[index] ?? index + 1)}`;
    return [refuse('step-outside', { joint: joint.stateKey, step, value: text, window: windowText(angle) })];
  });
};
