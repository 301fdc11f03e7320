/** A plan file, from text to document, with every problem at its line. */
import { checkPlan } from '@/lib/domain/plan/check';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Rank } from '@/lib/domain/plan/problem';
import { problemSentence } from '@/lib/domain/plan/problem-sentence';
import { planFileTrouble } from './plan-file';
import { planSchema } from './plan-schema';
import { shapeProblems } from './shape-problems';
import { readYaml } from './yaml-tree';
import type { TreePath, YamlTree } from './yaml-tree';

/** Line and column are counted from 1. */
export interface LocatedProblem {
  readonly line: number;
  readonly column: number;
  readonly rank: Rank;
  readonly code: string;
  readonly sentence: string;
  /** `operations.FR-010.needs[0]`; empty for the file as a whole. */
  readonly path: string;
}

export interface PlanRead {
  /** Null when the text is no plan at all; a document may still have problems of any rank. */
  readonly document: PlanDocument | null;
  /** In the order of the file. */
  readonly problems: LocatedProblem[];
}

/** Reads and checks a plan. Never throws for what the text says. */
export const readPlan = (text: string): PlanRead => {
  const trouble = planFileTrouble(text);
  if (trouble !== null) return refused(trouble.code, trouble.sentence);
  try {
    return readTree(readYaml(text));
  } catch (error) {
    // The two ways in which the parser gives up on a text that was made to overwhelm it.
    if (error instanceof RangeError)
      return refused(
        'too-deep',
        'Brackets or indents are nested too deeply to be read. Write the plan flat.',
      );
    if (error instanceof ReferenceError)
      return refused(
        'too-many-aliases',
        'The aliases (*name) multiply beyond measure, or name nothing. Write the lines out.',
      );
    throw error;
  }
};

const refused = (code: string, sentence: string): PlanRead => ({
  document: null,
  problems: [{ line: 1, column: 1, rank: 'error', code, sentence, path: '' }],
});

const readTree = (tree: YamlTree): PlanRead => {
  const faults = tree.faults.map((fault): LocatedProblem => ({
    ...fault,
    rank: 'error',
    path: pathText(fault.path),
  }));
  // What a broken text seems to say would only bring problems that aren't there.
  if (faults.some(({ code }) => code !== 'duplicate-key'))
    return { document: null, problems: inOrder(faults) };
  const data = tree.toData();
  if (data === null || data === undefined)
    return refused('empty', 'This file is empty. Begin with “plan:”, “revision:” and “stages:”.');
  const parsed = planSchema.safeParse(data);
  if (parsed.success && faults.length === 0)
    return { document: parsed.data, problems: inOrder(checked(tree, parsed.data)) };

  const shape = shapeProblems(planSchema, data, parsed.error?.issues ?? [], tree.typedAt);
  const located = shape.map(({ code, path, onKey, sentence }): LocatedProblem => ({
    ...tree.spotOf(path, onKey),
    rank: 'error',
    code,
    sentence,
    path: pathText(path),
  }));
  // References can't be judged while elements are missing, but a text that can't be read is wrong anyway.
  const sound = planSchema.safeParse(
    without(
      data,
      shape.map(({ path }) => path),
    ),
  );
  const unreadable = sound.success
    ? checked(tree, sound.data).filter(({ code }) => code.endsWith('-unreadable'))
    : [];
  return { document: null, problems: inOrder([...faults, ...located, ...unreadable]) };
};

const checked = (tree: YamlTree, document: PlanDocument): LocatedProblem[] =>
  checkPlan(document).map((each) => ({
    ...tree.spotOf(each.path, each.onKey),
    rank: each.rank,
    code: each.code,
    sentence: problemSentence(each),
    path: pathText(each.path),
  }));

/** The data without the elements that these paths lead into; whole enough to be read as a plan. */
const without = (data: unknown, paths: readonly TreePath[]): unknown => {
  if (typeof data !== 'object' || data === null) return data;
  const bad = new Set(paths.map((path) => JSON.stringify(path.slice(0, 2))));
  const isSound = (...path: string[]): boolean => !bad.has(JSON.stringify(path));
  const sections = Object.entries(data).flatMap(([section, elements]: [string, unknown]) => {
    if (!isSound(section) || typeof elements !== 'object' || elements === null) return [];
    const kept = Object.entries(elements).filter(([key]) => isSound(section, key));
    return [[section, Object.fromEntries(kept)]];
  });
  return { stages: {}, ...Object.fromEntries(sections), plan: '-', revision: '-' } as unknown;
};

const inOrder = (problems: readonly LocatedProblem[]): LocatedProblem[] =>
  [...problems].sort((a, b) => a.line - b.line || a.column - b.column);

const pathText = (path: TreePath): string =>
  path.map((part, at) => (typeof part === 'number' ? `[${part}]` : at === 0 ? part : `.${part}`)).join('');
