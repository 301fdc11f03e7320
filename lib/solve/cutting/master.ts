/**
 * The master problem of column generation as a linear program that is kept open: patterns are added, demand and room are
 * changed, and each time the simplex method goes on from where it stood.
 */
import type { Highs, Model } from 'highs';
import { keyOf } from './instance';
import type { Instance, Pattern, Question } from './instance';

export interface MasterSetup {
  /** What one bin of each kind costs. */
  readonly costs: readonly number[];
  /** What it costs to leave a piece out: without that a linear program may have no answer to go on from. */
  readonly leftOut: number;
  /** Other costs of one bin of each kind, whose sums have a limit: what more important questions were answered with. */
  readonly limits: readonly (readonly number[])[];
}

export interface MasterAnswer {
  readonly objective: number;
  /** For each pattern of the pool, in its order. */
  readonly values: Float64Array;
  /** How many pieces are left out, all widths together. */
  readonly missing: number;
  readonly pieceDuals: Float64Array;
  readonly kindDuals: Float64Array;
  readonly limitDuals: Float64Array;
}

export interface Master {
  readonly pool: readonly Pattern[];
  readonly setup: MasterSetup;
  /** False where the pool had it. */
  readonly add: (patterns: readonly Pattern[]) => number;
  /** What is to be cut, and how many bins of each kind there must and may be. Patterns beyond that are shut. */
  readonly ask: (question: Question) => void;
  /** Shuts a pattern, or opens it again where it fits what is asked. */
  readonly ban: (index: number, isBanned: boolean) => void;
  readonly solve: () => MasterAnswer;
  readonly close: () => void;
}

export const openMaster = (
  solver: Highs,
  instance: Instance,
  setup: MasterSetup,
  patterns: readonly Pattern[],
): Master => {
  const pieces = instance.widths.length;
  const kinds = instance.kinds.length;
  const { limits, costs } = setup;
  const model = emptyModel(solver, instance, setup);
  const pool: Pattern[] = [];
  const keys = new Set<string>();
  const banned = new Set<number>();
  let asked = instance.demand;

  const upperOf = (index: number): number => {
    const pattern = pool[index];
    if (pattern === undefined || banned.has(index)) return 0;
    return pattern.items.every((item, k) => (pattern.counts[k] ?? 0) <= (asked[item] ?? 0))
      ? solver.infinity
      : 0;
  };

  const add = (more: readonly Pattern[]): number => {
    const fresh = more.filter((pattern) => {
      const key = keyOf(pattern);
      if (keys.has(key)) return false;
      keys.add(key);
      return true;
    });
    if (fresh.length === 0) return 0;
    const starts = [0];
    const indices: number[] = [];
    const values: number[] = [];
    const first = pool.length;
    for (const pattern of fresh) {
      pool.push(pattern);
      pattern.items.forEach((item, k) => {
        indices.push(item);
        values.push(pattern.counts[k] ?? 0);
      });
      indices.push(pieces + pattern.kind);
      values.push(1);
      limits.forEach((limit, j) => {
        const cost = limit[pattern.kind] ?? 0;
        if (cost === 0) return;
        indices.push(pieces + kinds + j);
        values.push(cost);
      });
      starts.push(indices.length);
    }
    model.addCols({
      cost: Float64Array.from(fresh, ({ kind }) => costs[kind] ?? 0),
      lower: new Float64Array(fresh.length),
      upper: Float64Array.from(fresh, (_, k) => upperOf(first + k)),
      matrix: {
        format: 'csc',
        numRows: pieces + kinds + limits.length,
        numCols: fresh.length,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: Float64Array.from(values),
      },
    });
    return fresh.length;
  };

  const ask = ({ demand, least, most, limits: spendable }: Question): void => {
    asked = demand;
    model.changeRowsBounds(
      { kind: 'range', from: 0, to: pieces + kinds + limits.length - 1 },
      Float64Array.from([...demand, ...least, ...limits.map(() => -solver.infinity)]),
      Float64Array.from([...demand.map(() => solver.infinity), ...most, ...spendable]),
    );
    if (pool.length > 0)
      model.changeColsBounds(
        { kind: 'range', from: pieces, to: pieces + pool.length - 1 },
        new Float64Array(pool.length),
        Float64Array.from(pool, (_, index) => upperOf(index)),
      );
  };

  add(patterns);
  return {
    pool,
    setup,
    add,
    ask,
    ban: (index, isBanned) => {
      if (isBanned) banned.add(index);
      else banned.delete(index);
      model.changeColBounds(pieces + index, 0, upperOf(index));
    },
    solve: () => solved(model, pieces, kinds),
    close: () => model.dispose(),
  };
};

/** Only the columns that leave a piece out; presolve is off, for it would forget the basis. */
const emptyModel = (solver: Highs, { demand, kinds }: Instance, { leftOut, limits }: MasterSetup): Model => {
  const rows = demand.length + kinds.length + limits.length;
  const model = solver.createModel({
    numCols: demand.length,
    numRows: rows,
    colCost: demand.map(() => leftOut),
    colLower: demand.map(() => 0),
    colUpper: demand.map(() => solver.infinity),
    rowLower: [...demand, ...kinds.map(() => 0), ...limits.map(() => -solver.infinity)],
    rowUpper: Array.from({ length: rows }, () => solver.infinity),
    matrix: {
      format: 'csc',
      numRows: rows,
      numCols: demand.length,
      starts: Array.from({ length: demand.length + 1 }, (_, k) => k),
      indices: demand.map((_, k) => k),
      values: demand.map(() => 1),
    },
  });
  model.options.set({ output_flag: false, presolve: 'off', solver: 'simplex', simplex_strategy: 4 });
  return model;
};

const solved = (model: Model, pieces: number, kinds: number): MasterAnswer => {
  model.run();
  const { colValue, rowDual } = model.getSolution();
  return {
    objective: model.getObjectiveValue(),
    values: colValue.subarray(pieces),
    missing: colValue.subarray(0, pieces).reduce((sum, value) => sum + value, 0),
    pieceDuals: rowDual.subarray(0, pieces),
    kindDuals: rowDual.subarray(pieces, pieces + kinds),
    limitDuals: rowDual.subarray(pieces + kinds),
  };
};
