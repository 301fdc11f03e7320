/**
 * What the rulebook costs: assess of one car and of a thousand, decide and evolve of the acts that are given most,
 * compiling a plan. The medians are printed at the end, beside what they are held to.
 */
import { readFileSync } from 'node:fs';
import { afterAll, bench, describe } from 'vitest';
import { assess } from '@/lib/domain/assess';
import type { Car } from '@/lib/domain/car/rows';
import type { Claim } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import { evolveAll } from '@/lib/domain/evolve';
import { compilePlan } from '@/lib/domain/plan/compile';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { factsAt } from '@/lib/domain/play';
import type { Line } from '@/lib/domain/play';
import { readPlan } from '@/lib/wire/read-plan';
import { bigShop, buildCar, spoil } from '@/tests/support/big-plan';
import type { BigShop } from '@/tests/support/big-plan';
import { finalClaim } from '@/tests/support/drive';
import { LEAD } from '@/tests/support/game';
import type { Game } from '@/tests/support/game';

const FLEET = 1000;

/** Three cars half built, a little apart, and the doubts that a tool and a lot bring. */
const halfBuilt = (): BigShop => {
  const shop = bigShop();
  for (const [car, operations] of [
    ['150', 150],
    ['140', 140],
    ['165', 165],
  ] as const)
    buildCar(shop.game, car, operations);
  spoil(shop.game);
  return shop;
};

const { game, document } = halfBuilt();
const facts = game.factsNow();
const car = game.car('150');
const plan = game.plan(car);
/** Distinct rows for each car, so that nothing is answered from another's. */
const fleet = Array.from({ length: FLEET }, (_, index): Car => {
  const model = game.car(['150', '140', '165'][index % 3] ?? '150');
  return { ...structuredClone(model), id: String(index) };
});

const measurements: { what: string; samples: number[]; goal: string }[] = [];

/** Measures by itself as well, for the median, which the table of the bench does not show. */
const measured = (what: string, goal: string, act: () => unknown, isLong = false): void => {
  const samples: number[] = [];
  measurements.push({ what, samples, goal });
  bench(
    what,
    () => {
      const start = performance.now();
      act();
      samples.push((performance.now() - start) * 1000);
    },
    isLong ? { time: 0, iterations: 7, warmupTime: 0, warmupIterations: 2 } : { time: 1000, warmupTime: 200 },
  );
};

const median = (samples: readonly number[]): number =>
  [...samples].sort((a, b) => a - b)[Math.floor(samples.length / 2)] ?? 0;

const lineOf = (from: Game, by: string, claim: Claim): Line => from.lineOf(by, claim);
const judged = (from: Game, line: Line): (() => unknown) => {
  const known = factsAt(from.world, from.stage, line);
  const first = decide(known, from.world, line.command);
  if (!first.ok) throw new Error(`what is measured is refused: ${JSON.stringify(first.error)}`);
  return () => {
    const verdict = decide(known, from.world, line.command);
    return verdict.ok ? evolveAll(from.world, verdict.value) : null;
  };
};

/** Beside the half-built car, sound ones: about to start an operation, to torque in it, to pass a gate. */
const sound = bigShop().game;
buildCar(sound, 'start', 151);
buildCar(sound, 'torque', 151);
sound.must('tim', { type: 'start-operation', car: 'torque', operation: 'O-151' });
buildCar(sound, 'gate', 150);
const joint = plan.joints.get('J-151');
const tool = sound.world.shop.tools['E-1'];
if (joint === undefined || tool === undefined) throw new Error('nothing to torque');

const corbel = readPlan(readFileSync(new URL('../../seed/corbel-54.yaml', import.meta.url), 'utf8')).document;
if (corbel === null) throw new Error('the Corbel 54 does not read');
const fresh = (each: PlanDocument): PlanDocument => ({ ...each });

/** Nothing is kept of one car when the next is looked at. */
const assessAll = (): number => fleet.reduce((jobs, each) => jobs + assess(plan, each, facts).jobs.length, 0);

describe('assess', () => {
  measured('assess, one car of 300 operations', '<= 200, wanted 100', () => assess(plan, car, facts));
  measured(`assess, ${String(FLEET)} such cars`, '<= 150000', assessAll, true);
});

describe('decide + evolve', () => {
  measured('final-joint', '', judged(sound, lineOf(sound, 'tim', finalClaim('torque', joint, tool))));
  measured(
    'start-operation',
    '',
    judged(sound, lineOf(sound, 'tim', { type: 'start-operation', car: 'start', operation: 'O-151' })),
  );
  measured(
    'advance-car',
    '',
    judged(sound, lineOf(sound, LEAD, { type: 'advance-car', car: 'gate', to: 'S5' })),
  );
});

describe('compile', () => {
  measured('compile, plan of 300 operations', '', () => compilePlan(fresh(document), {}));
  measured('compile, Corbel 54', '', () => compilePlan(fresh(corbel), {}));
});

afterAll(() => {
  const lines = measurements.map(
    ({ what, samples, goal }) => `${what.padEnd(36)}${median(samples).toFixed(1).padStart(12)}  ${goal}`,
  );
  console.log(['median, µs'.padStart(48), ...lines].join('\n'));
});
