/**
 * What the rulebook costs: assess of one car and of a thousand, decide and evolve of the acts that are given most,
 * compiling a plan. `npm run bench`; a plain script, since a test runner's modules are slower than the product's.
 */
import { readFileSync } from 'node:fs';
import { assess } from '@/lib/domain/assess';
import type { Car } from '@/lib/domain/car/rows';
import type { Claim } from '@/lib/domain/commands';
import { decide } from '@/lib/domain/decide';
import { evolveAll } from '@/lib/domain/evolve';
import { compilePlan } from '@/lib/domain/plan/compile';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { factsAt } from '@/lib/domain/play';
import type { Line } from '@/lib/domain/play';
import { demandOf } from '@/lib/domain/shop/demand';
import { catalogueOf } from '@/lib/domain/shop/item';
import { carNeed } from '@/lib/domain/shop/need';
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
/** Distinct rows for each car, as they come out of a store: nothing is answered from another's. */
const fleet = Array.from({ length: FLEET }, (_, index): Car => {
  const model = game.car(['150', '140', '165'][index % 3] ?? '150');
  return { ...(JSON.parse(JSON.stringify(model)) as Car), id: String(index) };
});

const median = (samples: readonly number[]): number =>
  [...samples].sort((a, b) => a - b)[Math.floor(samples.length / 2)] ?? 0;

/** Runs it warm, then prints the median of the counted runs in microseconds, beside what it is held to. */
const measured = (what: string, goal: string, act: () => unknown, runs = 2000): void => {
  for (let run = 0; run < runs / 2; run += 1) act();
  const samples = Array.from({ length: runs }, () => {
    const start = performance.now();
    act();
    return (performance.now() - start) * 1000;
  });
  console.log(`${what.padEnd(40)}${median(samples).toFixed(1).padStart(12)}  ${goal}`);
};

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
buildCar(sound, 'gate', 150);
// Somebody else: Tim has one running clock, and it is his start that is measured.
sound.must('vic', { type: 'start-operation', car: 'torque', operation: 'O-151' });
const joint = plan.joints.get('J-151');
const tool = sound.world.shop.tools['E-1'];
if (joint === undefined || tool === undefined) throw new Error('nothing to torque');

const corbel = readPlan(readFileSync(new URL('../../seed/corbel-54.yaml', import.meta.url), 'utf8')).document;
if (corbel === null) throw new Error('the Corbel 54 does not read');
const fresh = (each: PlanDocument): PlanDocument => ({ ...each });

/** Nothing is kept of one car when the next is looked at. */
const assessAll = (): number => fleet.reduce((jobs, each) => jobs + assess(plan, each, facts).jobs.length, 0);

console.log('median, µs'.padStart(52));
measured('assess, one car of 300 operations', '<= 200, wanted 100', () => assess(plan, car, facts));
measured(`assess, ${String(FLEET)} such cars`, '<= 150000', assessAll, 15);
/** A copy has no history: what is kept for each version of a car is found anew. */
const assessAnew = (): number =>
  fleet.reduce((jobs, each) => jobs + assess(plan, { ...each }, facts).jobs.length, 0);
measured('the same, each seen for the first time', '', assessAnew, 15);

const catalogue = catalogueOf([document]);
const needAnew = (): number =>
  fleet.reduce(
    (lines, each) => lines + carNeed(plan, { ...each }, game.world.shop, catalogue).lines.length,
    0,
  );
measured('carNeed, one car seen for the first time', '', () =>
  carNeed(plan, { ...car }, game.world.shop, catalogue),
);
measured(`carNeed, ${String(FLEET)} such cars`, '', needAnew, 15);
const twenty = fleet.slice(0, 20).map((each) => ({
  plan,
  car: each,
  need: carNeed(plan, each, game.world.shop, catalogue),
}));
const reckoning = { today: '2026-11-25', minutesADay: 420, days: { shut: [6, 7], closed: [] } };
measured('demandOf, 20 such cars', '', () => demandOf(twenty, [], catalogue, reckoning), 200);
measured('final-joint', '', judged(sound, lineOf(sound, 'vic', finalClaim('torque', joint, tool))));
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
measured('compile, plan of 300 operations', '', () => compilePlan(fresh(document), {}), 100);
measured('compile, Corbel 54', '', () => compilePlan(fresh(corbel), {}), 100);
