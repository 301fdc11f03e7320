/**
 * The least of one cost over all plans, proved where it can be: the bound of the linear program, dives for a plan that
 * meets it, and where none does, branching on how many bins of each kind are cut.
 */
import type { Highs } from 'highs';
import { generate } from './columns';
import { dive } from './dive';
import type { Deadline, Instance, Pattern, Question } from './instance';
import { openMaster } from './master';
import type { Master } from './master';
import { mixed } from './mixed';

export interface Aim {
  /** What one bin of each kind costs. */
  readonly costs: readonly number[];
  /** Every sum of costs is a whole multiple of this. */
  readonly step: number;
}

export interface Least {
  /** Null where no plan was found; then `value` says nothing. */
  readonly patterns: readonly Pattern[] | null;
  readonly value: number;
  readonly bound: number;
}

export interface Task {
  readonly solver: Highs;
  readonly instance: Instance;
  readonly aim: Aim;
  readonly limits: readonly (readonly number[])[];
  readonly question: Question;
  /** A plan that keeps within the limits already. */
  readonly begun: readonly Pattern[] | null;
  /** Patterns that are worth knowing; new ones are added. */
  readonly pool: Pattern[];
  readonly deadline: Deadline;
}

interface Node {
  readonly question: Question;
  readonly bound: number;
}

const NOISE = 1e-6;
/** So many dives for numbers of bins that may do, where there are many such numbers. */
const EFFORTS = 3;

export const leastOf = (task: Task): Least => {
  const { aim, solver, instance, limits } = task;
  const master = openMaster(
    solver,
    instance,
    { costs: aim.costs, leftOut: leftOut(task), limits },
    task.pool,
  );
  try {
    let least = branch(task, master, EFFORTS);
    // Whatever the first look left open gets the rest of the time.
    for (let efforts = EFFORTS * 8; isOpen(task, least); efforts *= 8)
      least = branch({ ...task, begun: least.patterns }, master, efforts);
    return least;
  } finally {
    task.pool.splice(0, task.pool.length, ...master.pool);
    master.close();
  }
};

const isOpen = ({ deadline }: Task, { patterns, value, bound }: Least): boolean =>
  patterns !== null && bound < value && performance.now() < deadline;

/** More than any plan costs, by so much that even a hundredth of a piece left out costs more than a bin. */
const leftOut = ({ aim, question }: Task): number =>
  100 * Math.max(1, ...aim.costs) * Math.min(1000, 1 + Math.max(...question.most));

const branch = (task: Task, master: Master, efforts: number): Least => {
  const { aim, question, deadline } = task;
  const found = { patterns: task.begun, value: task.begun === null ? Infinity : costOf(aim, task.begun) };
  const take = (patterns: readonly Pattern[] | null): boolean => {
    if (patterns === null || costOf(aim, patterns) >= found.value) return false;
    found.patterns = patterns;
    found.value = costOf(aim, patterns);
    return true;
  };
  const open: Node[] = [{ question, bound: 0 }];
  // Where there are several kinds, other numbers of them may do what these can't.
  const isOneKind = task.instance.kinds.length === 1;
  /** The least cost that was neither reached nor shown to be out of reach. */
  let unsettled = Infinity;
  for (let first = true; open.length > 0; first = false) {
    const node = takeBest(open);
    if (node.bound >= found.value) break;
    if (performance.now() > deadline) {
      unsettled = Math.min(unsettled, node.bound);
      break;
    }
    master.ask(node.question);
    const { answer, bound: proved } = generate(
      task.instance,
      master,
      node.question,
      deadline,
      (bound) => roundUp(bound, aim.step) >= found.value,
    );
    const bound = Math.max(node.bound, roundUp(proved, aim.step));
    if (bound >= found.value) continue;
    if (first) {
      take(search(task, master, node.question, bound, isOneKind ? Infinity : 1));
      if (found.value <= bound) break;
    }
    const used = usedOf(task.instance, answer.values, master.pool);
    const split = used.findIndex((count) => Math.abs(count - Math.round(count)) > NOISE);
    if (split >= 0) {
      open.push(...halves(node.question, split, used[split] ?? 0, bound));
      continue;
    }
    const exactly = used.map((count) => Math.round(count));
    const cost = exactly.reduce((sum, count, kind) => sum + count * (aim.costs[kind] ?? 0), 0);
    const isMissing = answer.missing > NOISE;
    if (!isMissing && cost < found.value) {
      const room = { ...node.question, most: exactly };
      if ((first && isOneKind) || !take(search(task, master, room, cost, efforts)))
        unsettled = Math.min(unsettled, cost);
    } else if (isMissing) unsettled = Math.min(unsettled, bound);
    if (!isMissing) open.push(...others(node.question, exactly, bound));
  }
  const least = Math.min(found.value, unsettled, ...open.map(({ bound }) => bound));
  return { ...found, bound: least === Infinity ? 0 : least };
};

/** A plan that costs no more than `most`, from dives and from the mixed program over the patterns at hand. */
const search = (
  { solver, instance, aim, limits, deadline }: Task,
  master: Master,
  question: Question,
  most: number,
  efforts: number,
): readonly Pattern[] | null => {
  const within = { ...question, limits: [...question.limits, most], least: question.least.map(() => 0) };
  const all = [...limits, aim.costs];
  const begin = performance.now();
  for (let seed = 0; seed < efforts && performance.now() < deadline; seed += 1) {
    const patterns = dive(solver, instance, within, all, master.pool, deadline, seed);
    if (patterns !== null) return patterns;
    if (seed % 8 !== 2) continue;
    const spell = efforts <= EFFORTS ? 0.1 : Math.max(0.2, (deadline - begin) / 8000) * (seed < 8 ? 1 : 2);
    const solved = mixed(
      solver,
      instance,
      within,
      all,
      master.pool,
      Math.min(spell, (deadline - performance.now()) / 1000),
    );
    if (solved !== null) return solved;
  }
  return null;
};

const takeBest = (open: Node[]): Node => {
  let best = 0;
  for (const [index, { bound }] of open.entries()) if (bound < (open[best]?.bound ?? 0)) best = index;
  const [node] = open.splice(best, 1);
  if (node === undefined) throw new Error('There is no open node left.');
  return node;
};

export const costOf = ({ costs }: Aim, patterns: readonly Pattern[]): number =>
  patterns.reduce((sum, { kind }) => sum + (costs[kind] ?? 0), 0);

const roundUp = (bound: number, step: number): number => Math.ceil(bound / step) * step;

const usedOf = ({ kinds }: Instance, values: Float64Array, pool: readonly Pattern[]): number[] => {
  const used = kinds.map(() => 0);
  values.forEach((value, index) => {
    const kind = pool[index]?.kind;
    if (kind !== undefined) used[kind] = (used[kind] ?? 0) + value;
  });
  return used;
};

const replaced = (numbers: readonly number[], at: number, value: number): readonly number[] =>
  numbers.map((each, index) => (index === at ? value : each));

const halves = (question: Question, kind: number, count: number, bound: number): readonly Node[] => [
  { bound, question: { ...question, most: replaced(question.most, kind, Math.floor(count)) } },
  { bound, question: { ...question, least: replaced(question.least, kind, Math.floor(count) + 1) } },
];

/** All other numbers of bins: the kinds before as here, this one fewer or more. */
const others = (question: Question, exactly: readonly number[], bound: number): readonly Node[] =>
  exactly.flatMap((count, kind) => {
    const least = question.least.map((each, k) => (k < kind ? (exactly[k] ?? 0) : each));
    const most = question.most.map((each, k) => (k < kind ? (exactly[k] ?? 0) : each));
    const nodes: Node[] = [];
    if (count > (least[kind] ?? 0))
      nodes.push({ bound, question: { ...question, least, most: replaced(most, kind, count - 1) } });
    if (count < (most[kind] ?? 0))
      nodes.push({ bound, question: { ...question, least: replaced(least, kind, count + 1), most } });
    return nodes;
  });
