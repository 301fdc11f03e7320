/** `solve order`: the cheapest order for a week’s needs, what is proved about it, and what each pin costs. */
import { exact, toDecimalText } from '@/lib/domain/base/exact';
import { shipmentsOf } from '@/lib/domain/shop/order';
import type { OrderProblem } from '@/lib/domain/shop/order';
import type { OrderScore } from '@/lib/domain/shop/order-score';
import { pinCosts } from '@/lib/solve/order/pin-costs';
import type { PinCost } from '@/lib/solve/order/pin-costs';
import { solveOrder } from '@/lib/solve/order/solve';
import type { OrderSolution } from '@/lib/solve/order/solve';
import { readOrderFile } from '@/lib/wire/order-file';
import { asJson, unusable } from './answer';
import type { Answer } from './answer';
import { inFile } from './in-file';
import { readText } from './read-file';
import type { SolveOptions } from './solve-cutting';

export const solveOrderFile = async (file: string, { json, seconds }: SolveOptions): Promise<Answer> => {
  const text = readText(file);
  if (!text.ok) return unusable(text.error);
  const problem = readOrderFile(text.value);
  if (!problem.ok) return { exit: 1, out: [], problems: inFile(file, problem.error) };
  const solution = await solveOrder(problem.value, seconds);
  const pins = await pinCosts(problem.value, solution, seconds);
  const exit = solution.answer === null || solution.unserved.length > 0 ? 1 : 0;
  return {
    exit,
    out: json === true ? asJson(asData(solution, pins)) : asLines(problem.value, solution, pins),
  };
};

const money = (minor: number): string => {
  const text = toDecimalText(exact(minor, 100), 2);
  const [whole = '0', decimals = ''] = text.split('.');
  return `${whole}.${decimals.padEnd(2, '0')}`;
};

const asData = (solution: OrderSolution, pins: readonly PinCost[]) => ({
  lateCarDays: solution.score?.lateCarDays ?? null,
  money: solution.score === null ? null : money(solution.score.money),
  bound: { lateCarDays: solution.bound.lateCarDays, money: money(solution.bound.money) },
  gap: solution.gap === null ? null : money(solution.gap),
  proved: solution.proved,
  seconds: solution.seconds,
  unserved: solution.unserved,
  late: solution.score?.late ?? [],
  shipments:
    solution.score?.shipments.map(({ shipment, goods, weight, freight }) => ({
      shipment,
      goods: money(goods),
      weight,
      freight: money(freight),
    })) ?? [],
  packs: solution.answer?.packs ?? [],
  given: solution.answer?.given ?? [],
  pins: pins.map((pin) => ({ ...pin, money: pin.money === null ? null : money(pin.money) })),
});

const asLines = (
  problem: OrderProblem,
  solution: OrderSolution,
  pins: readonly PinCost[],
): readonly string[] => [
  ...(solution.score === null ? ['No order was found.'] : summary(solution, solution.score)),
  ...sent(problem, solution),
  ...solution.unserved.map((line) => `Nobody can bring ${line}.`),
  ...pins.map(({ line, money: extra, lateCarDays }) =>
    extra === null || lateCarDays === null
      ? `What the pin of ${line} costs could not be found.`
      : `The pin of ${line} costs ${money(extra)} and ${String(lateCarDays)} late car-days.`,
  ),
];

const summary = ({ gap, proved, seconds }: OrderSolution, score: OrderScore): readonly string[] => [
  `${money(score.money)} (freight ${money(score.freight)}), ${String(score.lateCarDays)} late car-days; ` +
    (proved ? 'no cheaper order exists' : `at most ${money(gap ?? 0)} could be saved`) +
    `; ${seconds.toFixed(2)} s.`,
];

/** What is sent to whom, and when it comes. */
const sent = (problem: OrderProblem, { answer }: OrderSolution): readonly string[] =>
  shipmentsOf(problem).flatMap(({ key, supplier, ordered, arrives }) => {
    const packs = (answer?.packs ?? []).filter(({ shipment }) => shipment === key);
    if (packs.length === 0) return [];
    return [
      `  ${supplier.key}, ordered ${dateOf(ordered)}, there ${dateOf(arrives)}`,
      ...packs.map((each) => `    ${String(each.packs)} × ${each.offer}`),
    ];
  });

const DAY = 86_400_000;
const dateOf = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);
