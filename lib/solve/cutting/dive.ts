/**
 * Diving: fix the patterns that the linear program likes best, look for patterns that suit what is left, go on; where
 * it leads nowhere, step back and shut the pattern that led there. It finds plans; it proves nothing.
 */
import type { Highs } from 'highs';
import { generate } from './columns';
import { bestFit } from './fill';
import type { Deadline, Instance, Pattern, Question } from './instance';
import { openMaster } from './master';
import type { Master, MasterAnswer } from './master';

/** So often a dive may choose other than best, all depths together. */
const DISCREPANCIES = 3;
const DEEPEST = 4;
const IS_WHOLE = 1e-6;

/** A cutting with no more bins of each kind than asked, or null where none was found in time. */
export const dive = (
  solver: Highs,
  instance: Instance,
  question: Question,
  limits: readonly (readonly number[])[],
  patterns: readonly Pattern[],
  deadline: Deadline,
  seed: number,
): readonly Pattern[] | null => {
  const largest = Math.max(...instance.kinds.map(({ capacity }) => capacity));
  const master = openMaster(
    solver,
    instance,
    { costs: instance.kinds.map(({ capacity }) => capacity / largest), leftOut: 1.5, limits },
    patterns,
  );
  try {
    return descend(
      { instance, master, deadline, random: randomFrom(seed), noise: 0.1 * (1 + (seed % 6)) },
      question,
      0,
      DISCREPANCIES,
    );
  } finally {
    master.close();
  }
};

interface Search {
  readonly instance: Instance;
  readonly master: Master;
  readonly deadline: Deadline;
  readonly random: () => number;
  readonly noise: number;
}

const descend = (
  search: Search,
  question: Question,
  depth: number,
  discrepancies: number,
): readonly Pattern[] | null => {
  const { instance, master, deadline } = search;
  const shut: number[] = [];
  try {
    for (let tries = discrepancies; tries >= 0; tries -= 1) {
      if (performance.now() > deadline) return null;
      const quick = bestFit(instance, question.demand, question.most);
      if (quick !== null && isWithin(master, question, quick)) return quick;
      master.ask(question);
      const { answer, isComplete } = generate(instance, master, question, deadline, null);
      if (!isComplete || answer.missing > IS_WHOLE) return null;
      const chosen = choose(search, question, answer);
      if (chosen.length === 0) return null;
      const found = descend(search, less(question, chosen, master), depth + 1, tries);
      if (found !== null)
        return [...chosen.flatMap(([index, times]) => repeated(master.pool[index], times)), ...found];
      if (depth >= DEEPEST) return null;
      for (const [index] of chosen) {
        master.ban(index, true);
        shut.push(index);
      }
    }
    return null;
  } finally {
    for (const index of shut) master.ban(index, false);
  }
};

type Chosen = readonly (readonly [index: number, times: number])[];

/** All whole parts; where there are none, what is nearest to one, with a little chance so that no two dives are alike. */
const choose = (search: Search, question: Question, answer: MasterAnswer): Chosen => {
  const { pool } = search.master;
  const left = [...question.demand];
  const chosen: [number, number][] = [];
  const take = (index: number, wanted: number): void => {
    const pattern = pool[index];
    if (pattern === undefined) return;
    const fitting = pattern.items.map((item, k) => Math.floor((left[item] ?? 0) / (pattern.counts[k] ?? 1)));
    const times = Math.min(wanted, ...fitting);
    if (times <= 0) return;
    chosen.push([index, times]);
    pattern.items.forEach((item, k) => (left[item] = (left[item] ?? 0) - times * (pattern.counts[k] ?? 0)));
  };
  answer.values.forEach((value, index) => {
    if (value >= 1 - IS_WHOLE) take(index, Math.floor(value + IS_WHOLE));
  });
  if (chosen.length > 0) return chosen;
  const nearest = [...answer.values.entries()]
    .filter(([, value]) => value > IS_WHOLE)
    .map(([index, value]) => ({ index, liked: value * (1 + search.noise * search.random()) }))
    .sort((a, b) => b.liked - a.liked);
  const [first] = nearest;
  if (first !== undefined) take(first.index, 1);
  return chosen;
};

const less = (
  { demand, least, most, limits }: Question,
  chosen: Chosen,
  { pool, setup }: Master,
): Question => {
  const left = { demand: [...demand], least: [...least], most: [...most], limits: [...limits] };
  for (const [index, times] of chosen) {
    const pattern = pool[index];
    if (pattern === undefined) continue;
    const { kind } = pattern;
    pattern.items.forEach((item, k) => lower(left.demand, item, times * (pattern.counts[k] ?? 0)));
    lower(left.most, kind, times);
    lower(left.least, kind, Math.min(times, left.least[kind] ?? 0));
    setup.limits.forEach((costs, j) => lower(left.limits, j, times * (costs[kind] ?? 0)));
  }
  return left;
};

const isWithin = ({ setup }: Master, { limits }: Question, patterns: readonly Pattern[]): boolean =>
  setup.limits.every(
    (costs, j) => patterns.reduce((sum, { kind }) => sum + (costs[kind] ?? 0), 0) <= (limits[j] ?? 0),
  );

const lower = (numbers: number[], at: number, by: number): void => {
  numbers[at] = (numbers[at] ?? 0) - by;
};

const repeated = (pattern: Pattern | undefined, times: number): readonly Pattern[] =>
  pattern === undefined ? [] : Array.from({ length: times }, () => pattern);

/** Mulberry32: the same seed dives the same way again. */
const randomFrom = (seed: number) => {
  let state = seed;
  return (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};
