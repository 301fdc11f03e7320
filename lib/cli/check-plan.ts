/** `plan check`: every problem at its place, then what the plan holds. */
import { counted } from '@/lib/domain/base/words';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { positionsOf } from '@/lib/domain/plan/positions';
import type { Rank } from '@/lib/domain/plan/problem';
import { readPlan } from '@/lib/wire/read-plan';
import type { LocatedProblem, PlanRead } from '@/lib/wire/read-plan';
import { asJson, unusable } from './answer';
import type { Answer } from './answer';
import type { Ink } from './ink';
import { readText } from './read-file';

const RANKS: readonly Rank[] = ['error', 'gap', 'hint'];

export const checkPlanFile = (file: string, options: { readonly json?: boolean }, ink: Ink): Answer => {
  const text = readText(file);
  if (!text.ok) return unusable(text.error);
  const read = readPlan(text.value);
  const counts = countsOf(read);
  const exit = counts.errors > 0 ? 1 : 0;
  if (options.json === true) return { exit, out: asJson({ file, counts, problems: read.problems }) };
  const close = read.document === null ? found(counts) : `${holds(counts)}; ${found(counts)}`;
  return { exit, out: [...printProblems(file, read.problems, ink), close] };
};

/** `plan.yaml:12:5: error: …`, which editors and terminals turn into a link. */
export const printProblems = (
  file: string,
  problems: readonly LocatedProblem[],
  ink: Ink,
): readonly string[] =>
  problems.map(({ line, column, rank, sentence }) => {
    const shown = rank === 'error' ? ink.bad(rank) : rank === 'hint' ? ink.faint(rank) : rank;
    return `${file}:${String(line)}:${String(column)}: ${shown}: ${sentence}`;
  });

export const errorsIn = (problems: readonly LocatedProblem[]): readonly LocatedProblem[] =>
  problems.filter(({ rank }) => rank === 'error');

interface Counts {
  readonly stages: number;
  readonly operations: number;
  readonly joints: number;
  /** Joints as they stand on a car, each position counted; null while the plan has errors. */
  readonly jointsWithPositions: number | null;
  readonly checks: number;
  readonly errors: number;
  readonly gaps: number;
  readonly hints: number;
}

const countsOf = ({ document, problems }: PlanRead): Counts => {
  const size = (section: object | undefined): number => Object.keys(section ?? {}).length;
  const [errors = 0, gaps = 0, hints = 0] = RANKS.map(
    (rank) => problems.filter((problem) => problem.rank === rank).length,
  );
  return {
    stages: size(document?.stages),
    operations: size(document?.operations),
    joints: size(document?.joints),
    jointsWithPositions: document === null || errors > 0 ? null : positioned(document),
    checks: size(document?.checks),
    errors,
    gaps,
    hints,
  };
};

const positioned = ({ joints }: PlanDocument): number =>
  Object.values(joints ?? {}).reduce((sum, { repeat }) => sum + positionsOf(repeat).length, 0);

const found = ({ errors, gaps, hints }: Counts): string =>
  [counted(errors, 'error'), counted(gaps, 'gap'), counted(hints, 'hint')].join(', ');

const holds = ({ stages, operations, joints, jointsWithPositions, checks }: Counts): string => {
  const places =
    jointsWithPositions === null || jointsWithPositions === joints
      ? ''
      : ` (${String(jointsWithPositions)} with their positions)`;
  return [
    counted(stages, 'stage'),
    counted(operations, 'operation'),
    `${counted(joints, 'joint')}${places}`,
    counted(checks, 'check'),
  ].join(', ');
};
