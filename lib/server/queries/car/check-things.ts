/** The checks of a car for the forms: what they ask, with limits and units, and where they stand. */
import { toDecimalText } from '@/lib/domain/base/exact';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { CheckRow } from '@/lib/domain/car/rows';
import type { CompiledCheck } from '@/lib/domain/plan/compiled';
import { windowText } from '@/lib/domain/plan/window';
import { trustRefusals } from '@/lib/domain/torque/trust';
import type { ActRef, CheckLook, CheckThing, CheckValue, ToolChoice } from '@/lib/wire/views/desk';
import { lineOf } from './lines';
import type { Seen } from './seen';

const LOOKS: ReadonlySet<ActRef['type']> = new Set<ActRef['type']>([
  'begin-check',
  'pass-check',
  'fail-check',
]);

export const checkThings = (seen: Seen, acts: readonly ActRef[]): Readonly<Record<StateKey, CheckThing>> => {
  const looked = new Set(acts.filter(({ type }) => LOOKS.has(type)).map(({ key }) => key));
  const gauges = gaugesOf(seen);
  return Object.fromEntries(
    seen.plan.all.checks
      .filter((check) => check.undecided.length === 0)
      .map((check) => {
        const row = seen.car.checks[check.stateKey];
        const thing: CheckThing = {
          name: seen.words.thing(check.stateKey),
          stage: check.due,
          round: roundOf(row),
          status: row === undefined ? 'not done' : row.status === 'due-again' ? 'due again' : row.status,
          ...(looked.has(check.stateKey) ? { look: lookOf(seen, check, row, gauges) } : {}),
        };
        return [check.stateKey, thing];
      }),
  );
};

/** The round that a look now belongs to. */
const roundOf = (row: CheckRow | undefined): number =>
  row === undefined ? 1 : row.status === 'running' || row.status === 'due-again' ? row.round : row.round + 1;

const lookOf = (
  seen: Seen,
  check: CompiledCheck,
  row: CheckRow | undefined,
  gauges: readonly ToolChoice[],
): CheckLook => {
  const isRunning = row?.status === 'running';
  return {
    values: check.values.map(valueOf),
    holdsMs: check.holdsMs,
    begunAt: isRunning ? row.begunAt : null,
    by: isRunning && row.by !== null ? seen.tag(row.by).name : null,
    gauges: check.values.some(({ limit }) => limit.kind === 'window') ? gauges : [],
    neverConcede: check.neverConcede,
    failure: seen.plan.document.checks?.[check.key]?.failure ?? null,
  };
};

const valueOf = ({ name, limit }: CompiledCheck['values'][number]): CheckValue => {
  if (limit.kind === 'statement') return { kind: 'statement', name, limit: limit.text };
  const { low, high, unit } = limit.window;
  return {
    kind: 'window',
    name,
    limit: windowText(limit.window),
    unit,
    low: low === null ? null : toDecimalText(low),
    high: high === null ? null : toDecimalText(high),
  };
};

/** Gauges first; any tool may have been read. */
const gaugesOf = (seen: Seen): readonly ToolChoice[] =>
  Object.values(seen.facts.tools)
    .filter(({ kind }) => kind === 'gauge')
    .map((tool) => {
      const [refusal] = trustRefusals(tool, seen.facts);
      const choice = { id: tool.id, name: tool.name };
      return refusal === undefined ? choice : { ...choice, whyNot: lineOf(seen, refusal).says };
    });
