/** The head of a car's page: plate, stage rail, and what its two counts mean. */
import { cellsOf } from '@/lib/server/queries/board/cells';
import type { GateView, Head, PersonTag, StageView } from '@/lib/wire/views/car';
import { refusalLine } from '@/lib/wire/views/refusal';
import { numberWord } from './lines';
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
  const gate = isLast ? 'delivery' : `gate ${String(car.stage + 1)}`;
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
const countsOf = ({ car, plan, assessment }: Seen): Head['counts'] => {
  const { looseEnds } = assessment;
  const gate = assessment.gate.unmet.length;
  const isLast = car.stage === plan.stages.length - 1;
  const gateName = isLast ? 'delivery' : `gate ${String(car.stage + 1)}`;
  const byThisGate = looseEnds.filter(({ due }) => due !== null && due <= car.stage).length;
  const later = looseEnds.length - byThisGate;
  const parts = [
    byThisGate > 0 ? `${String(byThisGate)} asked by ${gateName}` : '',
    later > 0 ? `${String(later)} later` : '',
  ].filter((part) => part !== '');
  const ends =
    looseEnds.length === 0 ? 'nothing begun is left open' : `of the loose ends, ${parts.join(', ')}`;
  const begun = gate === 0 ? '' : `; what the gate waits for counts work that nobody has begun, too`;
  return { gate, gateName, ends: looseEnds.length, says: `${ends}${begun}.` };
};

/** Those who were given the stage, then those who are at work on the car: as on the track board. */
const crewOf = ({ car, plan, tag }: Seen, stage: number): readonly PersonTag[] => {
  const given = car.assignments[`stage:${plan.stages[stage]?.key ?? ''}`]?.people ?? [];
  const present =
    stage === car.stage
      ? Object.values(car.operations).flatMap((row) => (row.status === 'running' ? row.present : []))
      : [];
  return [...new Set([...given, ...present])].map(tag);
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
            : `passed ${seen.when(passed.passedAt)}, ${seen.tag(passed.by).name}${passed.overridden.length === 0 ? '' : `, over ${passed.overridden.join(', ')}`}`,
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
    lines: assessment.gate.unmet.map((refusal) => refusalLine(car.id, refusal, plan)),
    acts: car.delivered
      ? []
      : next === undefined
        ? [acts.act('deliver-car', 'car', car.id)]
        : [acts.act('advance-car', 'stage', next.key)],
  };
};
