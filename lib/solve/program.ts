/** A mixed-integer program as it is written down, column by column and row by row, and HiGHS’s answer to it. */
import type { Highs } from 'highs';

export type Terms = readonly (readonly [column: number, factor: number])[];

export interface Program {
  readonly costs: number[];
  readonly lowers: number[];
  readonly uppers: number[];
  readonly whole: (0 | 1)[];
  readonly rows: { readonly least: number; readonly most: number; readonly terms: Terms }[];
}

export const emptyProgram = (): Program => ({ costs: [], lowers: [], uppers: [], whole: [], rows: [] });

/** A number from 0 to `upper`; its column. */
export const column = (program: Program, cost: number, upper: number, isWhole: boolean): number => {
  program.lowers.push(0);
  program.uppers.push(upper);
  program.whole.push(isWhole ? 1 : 0);
  return program.costs.push(cost) - 1;
};

export const row = (program: Program, least: number, most: number, terms: Terms): void => {
  program.rows.push({ least, most, terms });
};

export interface ProgramAnswer {
  /** Null where nothing feasible was found. */
  readonly values: Float64Array | null;
  /** HiGHS’s word for the least that the cost can be; minus infinity where it has none. */
  readonly bound: number;
  readonly isInfeasible: boolean;
}

/** Costs are whole numbers: an answer within less than 1 of the bound is the best there is. */
export const solveProgram = (solver: Highs, program: Program, seconds: number): ProgramAnswer => {
  const count = program.costs.length;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { terms } of program.rows) {
    for (const [at, factor] of terms) {
      indices.push(at);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  const model = solver.createModel({
    numCols: count,
    numRows: program.rows.length,
    colCost: program.costs,
    colLower: program.lowers,
    colUpper: program.uppers,
    rowLower: program.rows.map(({ least }) => least),
    rowUpper: program.rows.map(({ most }) => most),
    matrix: { format: 'csr', numRows: program.rows.length, numCols: count, starts, indices, values },
    integrality: program.whole,
  });
  try {
    model.options.set({
      output_flag: false,
      time_limit: Math.max(0.01, seconds),
      mip_rel_gap: 0,
      mip_abs_gap: 0.9,
      mip_feasibility_tolerance: 1e-9,
      primal_feasibility_tolerance: 1e-9,
    });
    const { modelStatus } = model.run();
    const hasAnswer = model.info.get('primal_solution_status') === solver.constants.solutionStatus.feasible;
    return {
      values: hasAnswer ? model.getSolution().colValue : null,
      bound: Number(model.info.get('mip_dual_bound')),
      isInfeasible: modelStatus === solver.constants.modelStatus.infeasible,
    };
  } finally {
    model.dispose();
  }
};
