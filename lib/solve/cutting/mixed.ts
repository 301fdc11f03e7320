/** The mixed-integer program over the patterns at hand: finds plans that dives miss, and proves nothing. */
import type { Highs } from 'highs';
import type { Instance, Pattern, Question } from './instance';

export const mixed = (
  solver: Highs,
  { widths, kinds }: Instance,
  { demand, most, limits: spendable }: Question,
  limits: readonly (readonly number[])[],
  pool: readonly Pattern[],
  seconds: number,
): readonly Pattern[] | null => {
  if (seconds <= 0 || pool.length === 0) return null;
  const rows = widths.length + kinds.length + limits.length;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { kind, items, counts } of pool) {
    items.forEach((item, k) => {
      indices.push(item);
      values.push(counts[k] ?? 0);
    });
    indices.push(widths.length + kind);
    values.push(1);
    limits.forEach((costs, j) => {
      indices.push(widths.length + kinds.length + j);
      values.push(costs[kind] ?? 0);
    });
    starts.push(indices.length);
  }
  const model = solver.createModel({
    numCols: pool.length,
    numRows: rows,
    colCost: pool.map(() => 0),
    colLower: pool.map(() => 0),
    colUpper: pool.map(({ kind }) => most[kind] ?? 0),
    rowLower: [...demand, ...kinds.map(() => 0), ...limits.map(() => -solver.infinity)],
    rowUpper: [...demand.map(() => solver.infinity), ...most, ...spendable],
    matrix: { format: 'csc', numRows: rows, numCols: pool.length, starts, indices, values },
    integrality: pool.map(() => 1),
  });
  try {
    model.options.set({ output_flag: false, time_limit: seconds, mip_max_improving_sols: 1 });
    model.run();
    const found = model.getSolution().colValue;
    const patterns = pool.flatMap((pattern, index) =>
      Array.from({ length: Math.round(found[index] ?? 0) }, () => pattern),
    );
    return covers(demand, patterns) ? patterns : null;
  } finally {
    model.dispose();
  }
};

/** A time limit leaves an answer that is none. */
const covers = (demand: readonly number[], patterns: readonly Pattern[]): boolean => {
  const left = [...demand];
  for (const { items, counts } of patterns)
    items.forEach((item, k) => (left[item] = (left[item] ?? 0) - (counts[k] ?? 0)));
  return left.every((count) => count <= 0);
};
