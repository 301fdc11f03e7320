/**
 * What no mechanic would believe, looked for after every line of the whole history, on the car that it was about. Each
 * property is shown to find what it is there to find, on a car that was made false on purpose.
 */
import { describe, expect, test } from 'vitest';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import { levelOf } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { play } from '@/lib/domain/play';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';
import { demoOn } from '@/tests/support/demo';

/** A car as it stood after one line, and before it. */
interface Moment {
  readonly when: string;
  readonly plan: CompiledPlan;
  readonly car: Car;
  readonly before: Car | undefined;
}

const { lines, stage } = demoOn('2026-11-25');

const momentsOf = (): readonly Moment[] => {
  const found: Moment[] = [];
  let world: World = EMPTY_WORLD;
  for (const line of lines) {
    const earlier = world;
    world = play(world, stage, line).world;
    const { claim } = line.command;
    const car = 'car' in claim ? world.cars[claim.car] : undefined;
    const plan = car === undefined ? null : planOf({ plans: stage.plans }, car);
    if (car === undefined || plan === null) continue;
    found.push({ when: `${line.now} ${claim.type}`, plan, car, before: earlier.cars[car.id] });
  }
  return found;
};

const is = ({ car }: Moment, condition: string): boolean => car.conditions[condition]?.value === true;
const was = ({ before }: Moment, condition: string): boolean => before?.conditions[condition]?.value === true;
const isRunning = ({ car }: Moment, operation: string): boolean =>
  car.operations[operation]?.status === 'running';
const isFinished = ({ car }: Moment, operation: string): boolean =>
  car.operations[operation]?.status === 'finished';
const isShut = ({ car, plan }: Moment, joint: string): boolean =>
  [...plan.joints.values()]
    .filter((each) => each.key === joint)
    .every((each) => isAtLevel(levelOf(car.joints[each.stateKey]), 'final'));
/** It was not at work before this line, and now it is. */
const begun = (at: Moment): readonly string[] =>
  Object.entries(at.car.operations).flatMap(([key, { status }]) =>
    status === 'running' && at.before?.operations[key]?.status !== 'running' ? [key] : [],
  );

const HOT = ['FR-020', 'FR-030', 'FR-040'];
/** Under the donor the stands are the donor's; and FR-100 and WH-030 are what puts the car on them and takes it off. */
const STANDS_ON_ITS_OWN = ['FR-100', 'WH-030'];

const made = (car: Car, conditions: Readonly<Record<string, boolean>>): Car => ({
  ...car,
  conditions: Object.fromEntries(
    Object.entries(conditions).map(([key, value]) => [
      key,
      { ...car.conditions[key], value, run: null, because: '', by: 'mara', at: '' },
    ]),
  ),
});
const running = (car: Car, ...operations: readonly string[]): Car => ({
  ...car,
  operations: {
    ...car.operations,
    ...Object.fromEntries(
      operations.map((key) => [key, { ...car.operations['DN-010'], status: 'running' } as never]),
    ),
  },
});
const loose = (car: Car, joint: string): Car => {
  const row = car.joints[joint];
  return row === undefined ? car : { ...car, joints: { ...car.joints, [joint]: { ...row, level: 'open' } } };
};

interface Property {
  readonly name: string;
  readonly isFalse: (at: Moment) => boolean;
  /** Makes the oldest car false, before and after. */
  readonly spoil: (car: Car) => Car | readonly [before: Car, after: Car];
}

const PROPERTIES: readonly Property[] = [
  {
    name: 'no brake is bled with its drums, calipers or hoses off',
    isFalse: (at) =>
      isRunning(at, 'ST-130') &&
      !(
        isFinished(at, 'AX-120') &&
        isFinished(at, 'AX-130') &&
        ['J-218', 'J-301', 'J-302', 'J-310', 'J-311', 'J-312'].every((joint) => isShut(at, joint))
      ),
    spoil: (car) => loose(running(car, 'ST-130'), 'J-302@L'),
  },
  {
    name: 'pressure is held only by brakes that are bled',
    isFalse: (at) => is(at, 'holds-pressure') && !is(at, 'bled'),
    spoil: (car) => made(car, { 'holds-pressure': true }),
  },
  {
    name: 'pressure is said to hold only once its check has been passed',
    isFalse: (at) =>
      is(at, 'holds-pressure') && !was(at, 'holds-pressure') && at.car.checks['K-54']?.status !== 'clear',
    spoil: (car) => [made(car, {}), { ...made(car, { 'holds-pressure': true, bled: true }), checks: {} }],
  },
  {
    name: 'nothing stands on stands and on its wheels, or in the jig and on stands',
    isFalse: (at) => is(at, 'on-stands') && (is(at, 'weight') || is(at, 'on-jig')),
    spoil: (car) => made(car, { 'on-stands': true, weight: true }),
  },
  {
    name: 'nothing rolls on stands, or without its weight, or with wheel nuts loose',
    isFalse: (at) => is(at, 'may-roll') && (is(at, 'on-stands') || !is(at, 'weight') || !isShut(at, 'J-230')),
    spoil: (car) => loose(made(car, { 'may-roll': true, weight: true }), 'J-230@FL'),
  },
  {
    name: 'work on stands begins on a car that stands on them',
    isFalse: (at) =>
      begun(at).some((key) => {
        const operation = at.plan.operations.get(key);
        return (
          operation !== undefined &&
          operation.stage > 0 &&
          (at.plan.document.operations?.[operation.key]?.equipment ?? []).includes('stands ×4') &&
          !STANDS_ON_ITS_OWN.includes(key) &&
          !is(at, 'on-stands')
        );
      }),
    spoil: (car) => {
      const down = { ...made(car, {}), operations: {} };
      return [down, running(down, 'AX-030')];
    },
  },
  {
    name: 'nothing is welded with fuel or a battery in',
    isFalse: (at) => HOT.some((key) => isRunning(at, key)) && (is(at, 'fuel-in') || is(at, 'battery')),
    spoil: (car) => running(made(car, { battery: true }), 'FR-030'),
  },
  {
    name: 'fuel is in only where tank and unions are shut',
    isFalse: (at) =>
      is(at, 'fuel-in') && !['J-401', 'J-402', 'J-403', 'J-404', 'J-405'].every((joint) => isShut(at, joint)),
    spoil: (car) => loose(made(car, { 'fuel-in': true }), 'J-402'),
  },
  {
    name: 'an engine runs with oil and coolant in it, on mounts that hold',
    isFalse: (at) =>
      is(at, 'runs') &&
      !(is(at, 'oil-in') && is(at, 'coolant-in') && is(at, 'engine-in') && isShut(at, 'J-509')),
    spoil: (car) => made(car, { runs: true, 'oil-in': true, 'engine-in': true }),
  },
  {
    name: 'nobody verifies what they had a hand in',
    isFalse: ({ car }) =>
      Object.values(car.joints).some(({ marks }) =>
        marks.some(({ level, by, struck }, index) => {
          if (level !== 'verified' || struck) return false;
          const hands = marks.slice(0, index).filter((mark) => mark.level !== 'verified' && !mark.struck);
          return hands.some((hand) => hand.by === by);
        }),
      ),
    spoil: (car) => {
      const joints = Object.entries(car.joints).map(
        ([key, row]) => [key, { ...row, marks: bySamePerson(row.marks) }] as const,
      );
      return { ...car, joints: Object.fromEntries(joints) };
    },
  },
];

const bySamePerson = (marks: Car['joints'][string]['marks']): Car['joints'][string]['marks'] =>
  marks.flatMap((mark) => [
    { ...mark, level: 'final', by: 'tobit', struck: false },
    { ...mark, level: 'verified', by: 'tobit', struck: false },
  ]);

const moments = momentsOf();
const oldest = moments.findLast(({ car }) => car.id === 'C54-011');

describe('at no moment of any car’s history', () => {
  test('of which there are thousands', () => {
    expect(moments.length).toBeGreaterThan(2500);
    expect(new Set(moments.map(({ car }) => car.id)).size).toBe(6);
  });

  test.each(PROPERTIES)('$name', ({ isFalse, spoil }) => {
    expect(moments.filter(isFalse).map(({ when, car }) => `${when} ${car.id}`)).toEqual([]);
    if (oldest === undefined) throw new Error('no oldest car');
    const spoilt = spoil(oldest.car);
    const [before, car] = 'id' in spoilt ? [oldest.before, spoilt] : spoilt;
    expect(isFalse({ ...oldest, before, car })).toBe(true);
  });
});
