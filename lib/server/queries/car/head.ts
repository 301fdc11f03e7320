/** The head of a car's page: plate, stage rail, and what its two counts mean. */
import { NO_DONOR_FACTS, donorWords } from '@/lib/domain/car/donor-identity';
import { cellsOf } from '@/lib/server/queries/board/cells';
import type { Counts, GateView, Head, PersonTag, StageView } from '@/lib/wire/views/car';
import { overriddenText } from '@/lib/wire/views/event-matters';
import { dueMark, lineOf, numberWord } from './lines';
import type { Seen } from './seen';
import type { Acts } from './who-may';

export const headOf = (seen: Seen): Head => {
  const { car, plan, setting } = seen;
  return {
    shop: setting.name,
    chassis: car.chassis,
    colour: car.colour,
    model: plan.document.plan,
    revision: plan.document.revision,
    crew: crewOf(seen, car.stage),
    options: Object.entries(plan.document.options ?? {}).map(([key, { name }]) => ({
      name,
      choice: car.options[key] ?? null,
    })),
    donor: donorWords(car.donor ?? NO_DONOR_FACTS),
    delivered: car.delivered,
    title: titleOf(seen),
    counts: countsOf(seen),
  };
};

const titleOf = ({ car, plan, assessment }: Seen): string => {
  if (car.delivered) return 'Delivered';
  const stage = plan.stages[car.stage];
  const unmet = assessment.gate.unmet.length;
  const isLast = car.stage === plan.stages.length - 1;
  const gate = dueMark({ car, plan }, car.stage).text;
  const blocks = isLast ? Math.max(unmet, assessment.looseEnds.length) : unmet;
  const how =
    blocks === 0
      ? isLast
        ? 'ready for delivery'
        : `${gate} is open`
      : `${gate} closed by ${numberWord(blocks)}`;
  return `In ${stage?.name ?? ''}, ${how}`;
};

/** Two questions that look alike: what the gate waits for, and what was begun and is not settled. */
const countsOf = ({ car, plan, assessment }: Seen): Counts => {
  const { looseEnds, gate } = assessment;
  const isLast = car.stage === plan.stages.length - 1;
  const gateName = dueMark({ car, plan }, car.stage).text;
  const ends = new Set(looseEnds.map(({ refusal }) => JSON.stringify(refusal.details)));
  const begun = gate.unmet.filter((refusal) => ends.has(JSON.stringify(refusal.details))).length;
  const unbegun = gate.unmet.length - begun;
  return {
    gate: gate.unmet.length,
    gateName,
    gateSays:
      gate.unmet.length === 0
        ? ''
        : unbegun === 0
          ? 'all of them loose ends'
          : begun === 0
            ? 'work that nobody has begun'
            : `${String(begun)} of them loose ends, ${String(unbegun)} not begun yet`,
    ends: looseEnds.length,
    endsSay: endsText(looseEnds.length, begun, gateName, isLast),
  };
};

const endsText = (all: number, here: number, gateName: string, isLast: boolean): string => {
  if (all === 0) return 'whatever was begun is settled';
  if (isLast) return 'delivery needs all of them settled';
  if (here === all) return `all asked by ${gateName}`;
  return here === 0
    ? 'all asked by a later gate'
    : `${String(here)} asked by ${gateName}, ${String(all - here)} later`;
};

/** Those who were given the stage, then those who are at work on the car: as on the track board. */
const crewOf = ({ car, plan, tag }: Seen, stage: number): readonly PersonTag[] => {
  const given = car.assignments[`stage:${plan.stages[stage]?.key ?? ''}`]?.people ?? [];
  const present =
    stage === car.stage
      ? Object.values(car.operations).flatMap((row) => (row.status === 'running' ? row.present : []))
      : [];
  return [...new Set([...given, ...present])].map((id) => tag(id));
};

export const stageViews = (seen: Seen): readonly StageView[] => {
  const { car, plan, facts, setting } = seen;
  const cells = cellsOf(plan, car, facts, setting.zone);
  return plan.stages.flatMap((stage) => {
    const cell = cells[stage.index];
    if (cell === undefined) return [];
    const passed = stage.index < car.stage ? car.gates[stage.key] : undefined;
    return [
      {
        key: stage.key,
        number: stage.index + 1,
        name: stage.name,
        state: stage.index < car.stage || car.delivered ? 'done' : stage.index === car.stage ? 'now' : 'wait',
        cell,
        crew: crewOf(seen, stage.index),
        passed:
          passed === undefined
            ? null
            : `passed ${seen.when(passed.passedAt)}, ${seen.tag(passed.by, passed.passedAt).name}${passed.overridden.length === 0 ? '' : `, ${overriddenText(passed.overridden)}`}`,
      },
    ];
  });
};

export const gateOf = (seen: Seen, acts: Acts): GateView => {
  const { car, plan, assessment } = seen;
  const next = plan.stages[car.stage + 1];
  return {
    stage: assessment.stage,
    name: next === undefined ? 'Delivery' : `Gate ${String(car.stage + 1)}`,
    next: next === undefined ? null : { key: next.key, name: next.name },
    lines: assessment.gate.unmet.map((refusal) => lineOf(seen, refusal)),
    acts: car.delivered
      ? []
      : next === undefined
        ? [acts.act('deliver-car', 'car', car.id)]
        : [acts.act('advance-car', 'stage', next.key)],
  };
};
