/** A plan as large as a real one, and a car half built on it: always the same, for what is measured. */
import type {
  CheckEntry,
  JointEntry,
  OperationEntry,
  PlanDocument,
  StageEntry,
} from '@/lib/domain/plan/document';
import type { Tool } from '@/lib/domain/torque/tool';
import { finalClaim, goodValues } from './drive';
import { Game, LEAD, OWNER, openShop } from './game';
import { ITEMS } from './random-plan';
import { RULES } from './rules';

const OPERATIONS = 300;
const STAGES = 10;
const PER_STAGE = OPERATIONS / STAGES;
/** 260 of the operations have a joint, 120 a check. */
const hasJoint = (index: number): boolean => index % 15 < 13;
const hasCheck = (index: number): boolean => index % 5 < 2;

const number = (index: number): string => String(index).padStart(3, '0');
const operationKey = (index: number): string => `O-${number(index)}`;
const jointKey = (index: number): string => `J-${number(index)}`;
const checkKey = (index: number): string => `K-${number(index)}`;
const indexes = Array.from({ length: OPERATIONS }, (_, index) => index);
const BIG = 'sha256:plan';

export const bigPlan = (): PlanDocument => ({
  plan: 'big',
  revision: 'r1',
  conditions: { 'on-stands': 'on stands', weight: 'on its springs' },
  stages: Object.fromEntries(
    Array.from({ length: STAGES }, (_, index): [string, StageEntry] => [
      `S${String(index)}`,
      { name: `stage ${String(index)}`, entry: index === 0 ? [] : ['+on-stands'], capacity: 2000 },
    ]),
  ),
  operations: Object.fromEntries(indexes.map((index) => [operationKey(index), operation(index)])),
  joints: Object.fromEntries(indexes.filter(hasJoint).map((index) => [jointKey(index), joint(index)])),
  checks: Object.fromEntries(indexes.filter(hasCheck).map((index) => [checkKey(index), check(index)])),
  items: ITEMS,
});

const operation = (index: number): OperationEntry => ({
  name: `operation ${number(index)}`,
  stage: `S${String(Math.floor(index / PER_STAGE))}`,
  minutes: 30,
  who: 'torque',
  needs: [
    ...(index > 0 ? [operationKey(index - 1)] : []),
    ...(index > 7 && hasJoint(index - 7) ? [`${jointKey(index - 7)} final`] : []),
    ...(index > 10 && hasCheck(index - 10) ? [checkKey(index - 10)] : []),
    ...(index > 0 ? ['+on-stands'] : []),
  ],
  body: [
    ...(hasJoint(index) ? [`final ${jointKey(index)}`] : []),
    ...(hasCheck(index) ? [`check ${checkKey(index)}`] : []),
    ...(index === 0 ? ['set on-stands'] : []),
  ],
});

const joint = (index: number): JointEntry => ({
  name: `joint ${number(index)}`,
  fasteners: 1 + (index % 4),
  pattern: 'line',
  passes: 1 + (index % 2),
  method: index % 3 === 0 ? 'click' : 'digital',
  torque: index % 2 === 0 ? '45 ± 3 N·m' : '60 ± 5 % lbf·ft',
  source: 'invented',
  ...(index % 3 === 0 ? { critical: true, verify: 'seen' as const } : {}),
  hardware: { bolt: 1 + (index % 4), nut: 1 + (index % 4) },
  disturbs: index > 15 && hasJoint(index - 15) ? [jointKey(index - 15)] : [],
});

const check = (index: number): CheckEntry => ({
  name: `check ${number(index)}`,
  kind: 'measured',
  values: { gap: '2 ± 0.5 mm', play: '<= 0.2 mm' },
  source: 'invented',
});

export interface BigShop {
  readonly game: Game;
  readonly document: PlanDocument;
}

export const bigShop = (): BigShop => {
  const document = bigPlan();
  const game = new Game(RULES, document);
  openShop(game);
  return { game, document };
};

/** Starts a car and does its first operations, passing the gates on the way. */
export const buildCar = (game: Game, car: string, operations: number): void => {
  game.must(LEAD, { type: 'start-car', car, plan: BIG, chassis: car });
  for (let index = 0; index < operations; index += 1) {
    if (index > 0 && index % PER_STAGE === 0)
      game.must(LEAD, { type: 'advance-car', car, to: `S${String(index / PER_STAGE)}` });
    doOperation(game, car, index);
  }
};

/** The second lot of nuts and bolts is in few joints: it will be kept apart. */
const doOperation = (game: Game, car: string, index: number): void => {
  const key = operationKey(index);
  const plan = game.plan(game.car(car));
  game.must('tim', { type: 'start-operation', car, operation: key });
  const made = plan.joints.get(jointKey(index));
  if (made !== undefined) {
    const lot = index % 15 === 3 ? '-2' : '-1';
    const hardware = made.hardware.map(({ item }) => ({ item, lot: `L-${item}${lot}` }));
    game.must('tim', { ...finalClaim(car, made, toolFor(game, index)), hardware });
    if (made.dueLevel === 'verified')
      game.must('una', { type: 'verify-joint', car, joint: made.stateKey, method: 'seen' });
  }
  const looked = plan.checks.get(checkKey(index));
  if (looked !== undefined)
    game.must('tim', { type: 'pass-check', car, check: looked.stateKey, values: goodValues(looked) });
  game.must('tim', { type: 'finish-operation', car, operation: key });
};

/** Every twentieth joint is torqued with the dial, which will be suspect. */
const toolFor = (game: Game, index: number): Tool => {
  const tool = game.world.shop.tools[index % 20 === 0 ? 'D-1' : 'E-1'];
  if (tool === undefined) throw new Error('no tool');
  return tool;
};

/** Doubts that follow from a tool and a lot, as found the evening after. */
export const spoil = (game: Game): void => {
  game.must(OWNER, {
    type: 'suspect-tool',
    tool: 'D-1',
    reason: 'dropped',
    from: '2026-11-02T08:00:00.000Z',
  });
  game.must(LEAD, {
    type: 'record-calibration',
    tool: 'D-1',
    on: '2026-11-02',
    due: '2027-12-31',
    asFound: [{ set: '100', delivered: '91' }],
  });
  game.must(OWNER, { type: 'quarantine-lot', lot: 'L-nut-2', reason: 'recalled' });
};
