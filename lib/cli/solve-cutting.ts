/** `solve cutting`: every list of a file, its plan and what is proved about it. */
import { exact, toDecimalText } from '@/lib/domain/base/exact';
import { solveCutting } from '@/lib/solve/cutting/solve';
import type { CuttingAnswer } from '@/lib/solve/cutting/solve';
import { readCuttingFile } from '@/lib/wire/cutting-file';
import type { CuttingList } from '@/lib/wire/cutting-file';
import { asJson, unusable } from './answer';
import type { Answer } from './answer';
import { inFile } from './in-file';
import { readText } from './read-file';

export interface SolveOptions {
  readonly json?: boolean;
  readonly seconds: number;
}

export const solveCuttingFile = async (file: string, { json, seconds }: SolveOptions): Promise<Answer> => {
  const text = readText(file);
  if (!text.ok) return unusable(text.error);
  const lists = readCuttingFile(text.value);
  if (!lists.ok) return { exit: 1, out: [], problems: inFile(file, lists.error) };
  const solved: { readonly list: CuttingList; readonly answer: CuttingAnswer }[] = [];
  for (const list of lists.value) solved.push({ list, answer: await solveCutting(list.problem, seconds) });
  const exit = solved.every(({ answer }) => answer.plan !== null) ? 0 : 1;
  if (json === true) return { exit, out: asJson(solved.map(({ list, answer }) => asData(list, answer))) };
  return { exit, out: solved.flatMap(({ list, answer }) => asLines(list, answer)) };
};

/** Lengths are in the file’s unit, as exact decimal text. */
const asData = (
  { problem, published }: CuttingList,
  { plan, score, bounds, proved, seconds }: CuttingAnswer,
) => {
  const first = {
    name: problem.name,
    lengths: score?.newLengths ?? null,
    bound: bounds.newLengths,
    proved: proved.newLengths,
    seconds,
  };
  if (published !== null) return first;
  return {
    ...first,
    taken:
      score === null
        ? null
        : {
            length: size(problem.scale, score.taken),
            bound: size(problem.scale, bounds.taken),
            proved: proved.taken,
          },
    waste: score === null ? null : size(problem.scale, score.waste),
    kept: score?.kept.map((rest) => size(problem.scale, rest)) ?? [],
    price: score === null ? null : size(100, score.price),
    bars: plan ?? [],
  };
};

const asLines = ({ problem }: CuttingList, { plan, score, bounds, proved, seconds }: CuttingAnswer) => {
  const took = `${seconds.toFixed(2)} s`;
  if (plan === null || score === null) return [`${problem.name}: no plan was found (${took}).`];
  const fewest = proved.newLengths ? 'no fewer will do' : `at least ${String(bounds.newLengths)} are needed`;
  const lengthOf = new Map(problem.pieces.map(({ key, length }) => [key, size(problem.scale, length)]));
  return [
    `${problem.name}: ${String(score.newLengths)} new lengths, ${fewest}; ${took}.`,
    ...plan.map(
      ({ stock, times, pieces }) =>
        `  ${String(times)} × ${stock}: ` +
        pieces
          .map(({ piece, count }) => `${String(count)} × ${lengthOf.get(piece) ?? ''} (${piece})`)
          .join(', '),
    ),
  ];
};

const size = (scale: number, whole: number): string => toDecimalText(exact(whole, scale));
