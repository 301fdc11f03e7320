/** What is wrong with the shape of a document, from zod's issues, in the words of the shop. */
import { z } from 'zod';
import { nearestWord } from '@/lib/domain/base/nearest';
import type { TreePath } from './yaml-tree';

export interface ShapeProblem {
  readonly code: 'unknown-field' | 'missing-field' | 'not-a-text' | 'wrong-word' | 'wrong-value';
  readonly path: TreePath;
  readonly onKey: boolean;
  readonly sentence: string;
}

type Issue = z.core.$ZodIssue;

/** A file of something else altogether has nothing but unknown fields. */
const MOST_UNKNOWN = 200;

/** `typedAt` gives a value as it stands in the file, so that the advice can quote it. */
export const shapeProblems = (
  schema: z.ZodType,
  data: unknown,
  issues: readonly Issue[],
  typedAt: (path: TreePath) => string | null,
): ShapeProblem[] => issues.flatMap((issue) => fromIssue(schema, data, issue, [], typedAt));

const fromIssue = (
  schema: z.ZodType,
  data: unknown,
  issue: Issue,
  under: TreePath,
  typedAt: (path: TreePath) => string | null,
): readonly ShapeProblem[] => {
  const path = [...under, ...issue.path.map((segment) => (typeof segment === 'symbol' ? '' : segment))];
  const name = nameOf(path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.slice(0, MOST_UNKNOWN).map((key) => unknownField(schema, [...path, key], key));
    case 'invalid_type':
      return [wrongType(data, path, name, issue.expected, typedAt(path))];
    case 'invalid_value': {
      const value = valueAt(data, path);
      const words = issue.values.map(String);
      const said = typeof value === 'string' ? value : (typedAt(path) ?? 'this');
      if (value === undefined) return [missing(path, name, `one of ${words.join(', ')}`)];
      return [
        {
          code: 'wrong-word',
          path,
          onKey: false,
          sentence: `“${said}” is no ${name}.${meant(nearestWord(said, words))} Write one of ${words.join(', ')}.`,
        },
      ];
    }
    case 'invalid_union': {
      const value = valueAt(data, path);
      // The branch that at least began to fit says best what is wrong.
      const branch = issue.errors.find((errors) =>
        errors.every((each) => each.path.length > 0 || fits(each, value)),
      );
      if (branch !== undefined) return branch.flatMap((each) => fromIssue(schema, data, each, path, typedAt));
      return [wrongValue(path, `“${name}” can’t be ${describe(value)}. ${wantedByUnion(issue.errors)}`)];
    }
    default:
      return [wrongValue(path, `“${name}”: ${issue.message}.`)];
  }
};

/** A field by its name; an entry of a list by the list's name and its place in it. */
const nameOf = (path: TreePath): string => {
  const last = path.at(-1) ?? 'plan';
  return typeof last === 'number' ? `${String(path.at(-2) ?? 'list')} no. ${String(last + 1)}` : last;
};

/** The value is of the branch's kind and only its content is wrong. */
const fits = (issue: Issue, value: unknown): boolean => {
  switch (issue.code) {
    case 'invalid_type':
      return false;
    case 'invalid_value':
      return typeof value === 'string';
    default:
      return true;
  }
};

const wantedByUnion = (branches: readonly (readonly Issue[])[]): string => {
  const wanted = branches.flat().flatMap((issue) => {
    if (issue.code === 'invalid_type') return [KINDS[issue.expected] ?? issue.expected];
    return issue.code === 'invalid_value' ? [`one of ${issue.values.map(String).join(', ')}`] : [];
  });
  return `Write ${[...new Set(wanted)].join(', or ')}.`;
};

const wrongValue = (path: TreePath, sentence: string): ShapeProblem => ({
  code: 'wrong-value',
  path,
  onKey: false,
  sentence,
});

const meant = (nearest: string | null): string => (nearest === null ? '' : ` Did you mean “${nearest}”?`);

const unknownField = (schema: z.ZodType, path: TreePath, key: string): ShapeProblem => {
  const known = fieldsAt(schema, path.slice(0, -1));
  return {
    code: 'unknown-field',
    path,
    onKey: true,
    sentence: `There is no field “${key}” here.${meant(nearestWord(key, known))} Known are ${known.join(', ')}.`,
  };
};

const missing = (path: TreePath, name: string, kind: string): ShapeProblem => ({
  code: 'missing-field',
  path,
  onKey: false,
  sentence: `“${name}” is missing. Add it: ${kind}.`,
});

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'fields under it',
  record: 'keys under it',
};

const wrongType = (
  data: unknown,
  path: TreePath,
  name: string,
  expected: string,
  typed: string | null,
): ShapeProblem => {
  const value = valueAt(data, path);
  const kind = KINDS[expected] ?? expected;
  if (value === undefined) return missing(path, name, kind);
  if (value === null) return wrongValue(path, `“${name}” is empty. Write ${kind}, or take the line out.`);
  if (expected === 'string' && (typeof value === 'number' || typeof value === 'boolean')) {
    const quoted = `"${typed ?? String(value)}"`;
    const isInList = typeof path.at(-1) === 'number';
    const written = isInList ? quoted : `${name}: ${quoted}`;
    return {
      code: 'not-a-text',
      path,
      onKey: false,
      sentence: `${typed ?? String(value)} is read as a ${typeof value}, and a text belongs here. Put it in quotes: ${written}.`,
    };
  }
  const said = typed ?? describe(value);
  return wrongValue(
    path,
    expected === 'int' && typeof value === 'number'
      ? `“${name}” is ${said}. Write ${kind}.`
      : `“${name}” can’t be ${describe(value)}. Write ${kind}.`,
  );
};

const describe = (value: unknown): string => {
  if (Array.isArray(value)) return 'a list';
  if (value === null || value === undefined) return 'empty';
  return typeof value === 'object' ? 'fields' : `a ${typeof value === 'string' ? 'text' : typeof value}`;
};

/** What stands at a path; undefined where the path leads out of the data. */
const valueAt = (data: unknown, path: TreePath): unknown => {
  let at: unknown = data;
  for (const segment of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, segment)) return undefined;
    at = Reflect.get(at, segment);
  }
  return at;
};

/** The fields that the object at a path may have. */
const fieldsAt = (schema: z.ZodType, path: TreePath): readonly string[] => {
  const [segment, ...rest] = path;
  if (schema instanceof z.ZodOptional) return fieldsAt(schema.unwrap() as z.ZodType, path);
  if (schema instanceof z.ZodUnion)
    return (schema.options as readonly z.ZodType[]).flatMap((each) => fieldsAt(each, path));
  if (schema instanceof z.ZodObject) {
    const shape: Readonly<Record<string, z.ZodType>> = schema.shape;
    if (segment === undefined) return Object.keys(shape);
    const field = shape[segment];
    return field === undefined ? [] : fieldsAt(field, rest);
  }
  if (segment === undefined) return [];
  if (schema instanceof z.ZodRecord) return fieldsAt(schema.valueType as z.ZodType, rest);
  return schema instanceof z.ZodArray ? fieldsAt(schema.element as z.ZodType, rest) : [];
};
