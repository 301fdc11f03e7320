/**
 * What the solvers do: a shop's cut list, a week's order of 500 items, and, where the path of a published set is given
 * (as argument or in SLIPMARK_CUTTING), by class how many of its lists come out at the known optimum.
 *
 *   npm run bench:solvers -- path/to/cutting.json [class or name]
 */
import { readFileSync } from 'node:fs';
import type { CuttingProblem } from '@/lib/domain/shop/cutting';
import { solveCutting } from '@/lib/solve/cutting/solve';
import { highs } from '@/lib/solve/highs';
import { solveOrder } from '@/lib/solve/order/solve';
import { readCuttingFile } from '@/lib/wire/cutting-file';
import { bigOrder } from '@/tests/support/big-order';

const SECONDS = 20;

/** Invented: five cars' worth of square tube from four lengths and six remnants, 60 pieces. */
const shopList: CuttingProblem = {
  name: 'shop list',
  scale: 1,
  kerf: 3,
  worthKeeping: 300,
  stock: [
    ...[3000, 4000, 5000, 6000].map((length) => ({
      key: `new ${String(length)}`,
      length,
      count: null,
      isRemnant: false,
      price: length / 2,
      ends: 10,
    })),
    ...[2950, 2480, 1730, 1405, 960, 615].map((length) => ({
      key: `rest ${String(length)}`,
      length,
      count: 1,
      isRemnant: true,
      price: 0,
      ends: 0,
    })),
  ],
  pieces: [
    [3150, 10],
    [1180, 10],
    [820, 20],
    [340, 20],
  ].map(([length = 0, count = 0]) => ({ key: String(length), length, count, wantedFor: '' })),
};

await highs();
for (let run = 0; run < 3; run += 1) {
  const { score, proved, seconds } = await solveCutting(shopList, SECONDS);
  console.log(
    `shop list: ${String(score?.newLengths)} new lengths, ${JSON.stringify(proved)}, ${seconds.toFixed(2)} s`,
  );
}
for (let seed = 1; seed <= 5; seed += 1) {
  const { score, gap, proved, seconds } = await solveOrder(bigOrder(500, seed), SECONDS);
  console.log(
    `order 500 × 3, no. ${String(seed)}: ${String(score?.money)}, gap ${String(gap)}, ${proved ? 'proved' : 'open'}, ${seconds.toFixed(2)} s`,
  );
}

const [path = process.env.SLIPMARK_CUTTING, only = ''] = process.argv.slice(2);
const lists = path === undefined ? null : readCuttingFile(readFileSync(path, 'utf8'));
if (lists?.ok === false) throw new Error(lists.error[0]?.sentence);
const classes = new Map<
  string,
  { lists: number; met: number; proved: number; seconds: number; slowest: number }
>();
for (const { problem, published } of lists?.value ?? []) {
  const of = published?.class ?? '';
  if (!`${of}/${problem.name}`.includes(only)) continue;
  const { score, proved, seconds } = await solveCutting(problem, SECONDS);
  const optimum = published?.optimum ?? 0;
  if (score !== null && score.newLengths < optimum)
    throw new Error(
      `${problem.name}: ${String(score.newLengths)} is below the published ${String(optimum)}.`,
    );
  const before = classes.get(of) ?? { lists: 0, met: 0, proved: 0, seconds: 0, slowest: 0 };
  classes.set(of, {
    lists: before.lists + 1,
    met: before.met + (score?.newLengths === optimum ? 1 : 0),
    proved: before.proved + (proved.newLengths ? 1 : 0),
    seconds: before.seconds + seconds,
    slowest: Math.max(before.slowest, seconds),
  });
}
for (const [of, { lists: count, met, proved, seconds, slowest }] of classes)
  console.log(
    `${of.padEnd(14)}${String(met)} of ${String(count)} at the optimum, ${String(proved)} proved, ` +
      `${(seconds / count).toFixed(2)} s each, slowest ${slowest.toFixed(1)} s`,
  );
