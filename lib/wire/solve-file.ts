/** A problem in a file, as JSON or YAML, from text to what its schema says, with every fault at its line. */
import type { z } from 'zod';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import { shapeProblems } from './shape-problems';
import { strictJson } from './strict-json';
import { readYaml } from './yaml-tree';
import type { TreePath } from './yaml-tree';

/** Line and column are counted from 1. */
export interface FileFault {
  readonly line: number;
  readonly column: number;
  /** `lines[0].quantity`; empty for the file as a whole. */
  readonly path: string;
  readonly sentence: string;
}

/** What is wrong with a value that has the right shape. */
export interface ValueFault {
  readonly path: TreePath;
  readonly sentence: string;
}

/** `schemaFor` looks which of several forms the text has; `judge` makes the problem, or tells what is wrong beyond the shape. Never throws for what the text says. */
export const readSolveFile = <Shape, Problem>(
  text: string,
  schemaFor: (data: unknown) => z.ZodType<Shape>,
  judge: (shape: Shape) => Result<Problem, readonly ValueFault[]>,
): Result<Problem, readonly FileFault[]> => {
  // A sound file needs no places, and finding them takes a hundred times as long.
  const plain = strictJson(text);
  const quick = plain.ok ? schemaFor(plain.value).safeParse(plain.value) : null;
  const judged = quick?.success === true ? judge(quick.data) : null;
  if (judged?.ok === true) return judged;
  try {
    return located(text, schemaFor, judge);
  } catch (error) {
    if (!(error instanceof RangeError || error instanceof ReferenceError)) throw error;
    return err([{ line: 1, column: 1, path: '', sentence: 'This is nested too deeply to be read.' }]);
  }
};

const located = <Shape, Problem>(
  text: string,
  schemaFor: (data: unknown) => z.ZodType<Shape>,
  judge: (shape: Shape) => Result<Problem, readonly ValueFault[]>,
): Result<Problem, readonly FileFault[]> => {
  const tree = readYaml(text);
  if (tree.faults.length > 0)
    return err(
      tree.faults.map(({ line, column, path, sentence }) => ({
        line,
        column,
        path: pathText(path),
        sentence,
      })),
    );
  const data = tree.toData();
  const at = ({ path, sentence, onKey = false }: ValueFault & { readonly onKey?: boolean }): FileFault => ({
    ...tree.spotOf(path, onKey),
    path: pathText(path),
    sentence,
  });
  const schema = schemaFor(data);
  const parsed = schema.safeParse(data);
  if (!parsed.success)
    return err(inOrder(shapeProblems(schema, data, parsed.error.issues, tree.typedAt).map(at)));
  const judged = judge(parsed.data);
  return judged.ok ? ok(judged.value) : err(inOrder(judged.error.map(at)));
};

const inOrder = (faults: readonly FileFault[]): readonly FileFault[] =>
  [...faults].sort((a, b) => a.line - b.line || a.column - b.column);

const pathText = (path: TreePath): string =>
  path.map((part, at) => (typeof part === 'number' ? `[${part}]` : at === 0 ? part : `.${part}`)).join('');
