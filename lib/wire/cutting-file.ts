/**
 * Cut lists in a file. One list, or many under `instances`; each either as a shop writes it (stock, remnants, pieces with
 * the cars they are for) or as the published test sets are (one capacity, items with counts, no kerf).
 */
import { z } from 'zod';
import { parseDecimal, parseInches, multiply, exact } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import { tooLong, wholeUnits } from '@/lib/domain/shop/cutting';
import type { CuttingProblem } from '@/lib/domain/shop/cutting';
import { readSolveFile } from './solve-file';
import type { FileFault, ValueFault } from './solve-file';

const length = z.union([z.string(), z.number()]);
const count = z.int().min(0).max(100_000);

const shopList = z.strictObject({
  name: z.string().optional(),
  unit: z.enum(['mm', 'in']).optional(),
  kerf: length,
  ends: length.optional(),
  keep: length.optional(),
  stock: z.array(
    z.strictObject({ key: z.string(), length, price: z.string().optional(), count: count.optional() }),
  ),
  remnants: z.array(z.strictObject({ key: z.string(), length, count: count.optional() })).optional(),
  pieces: z.array(z.strictObject({ key: z.string(), length, count, for: z.string().optional() })),
});

const published = z.strictObject({
  name: z.string(),
  class: z.string().optional(),
  capacity: z.int().min(1),
  items: z.array(z.strictObject({ length: z.int().min(1), count })),
  optimum: z.int().optional(),
});

const several = <List extends z.ZodType>(list: List) =>
  z.strictObject({ source: z.string().optional(), instances: z.array(list) });

type Shape = z.infer<typeof published> | z.infer<typeof shopList>;
type File = Shape | { readonly instances: readonly Shape[] };

/** By what stands in it, so that a fault is told in the words of the form that was meant. */
const schemaFor = (data: unknown): z.ZodType<File> => {
  const has = (value: unknown, field: string): value is object =>
    typeof value === 'object' && value !== null && field in value;
  if (!has(data, 'instances')) return has(data, 'capacity') ? published : shopList;
  const lists: unknown = Reflect.get(data, 'instances');
  return several(Array.isArray(lists) && has(lists[0], 'capacity') ? published : shopList);
};

export interface CuttingList {
  readonly problem: CuttingProblem;
  /** Of a published set: the class, and the fewest lengths that are known to do. */
  readonly published: { readonly class: string; readonly optimum: number | null } | null;
}

export const readCuttingFile = (text: string): Result<readonly CuttingList[], readonly FileFault[]> =>
  readSolveFile(text, schemaFor, (file) => {
    const lists = 'instances' in file ? file.instances : [file];
    const read = lists.map((each, index) =>
      'capacity' in each
        ? fromPublished(each)
        : fromShop(each, 'instances' in file ? ['instances', index] : []),
    );
    const faults = read.flatMap((each) => (each.ok ? [] : each.error));
    return faults.length > 0 ? err(faults) : ok(read.flatMap((each) => (each.ok ? [each.value] : [])));
  });

const fromPublished = (file: z.infer<typeof published>): Result<CuttingList, readonly ValueFault[]> =>
  ok({
    problem: {
      name: file.name,
      scale: 1,
      stock: [{ key: 'stock', length: file.capacity, count: null, isRemnant: false, price: 0, ends: 0 }],
      pieces: file.items.map((item, index) => ({
        key: `${String(item.length)} no. ${String(index + 1)}`,
        ...item,
        wantedFor: '',
      })),
      kerf: 0,
      worthKeeping: null,
    },
    published: { class: file.class ?? '', optimum: file.optimum ?? null },
  });

const fromShop = (
  file: z.infer<typeof shopList>,
  at: readonly (string | number)[],
): Result<CuttingList, readonly ValueFault[]> => {
  const faults: ValueFault[] = [];
  const say = (path: readonly (string | number)[], sentence: string): void => {
    faults.push({ path: [...at, ...path], sentence });
  };
  const read = (value: string | number, ...path: (string | number)[]): Exact => {
    const text = String(value);
    const size = file.unit === 'in' ? (parseInches(text) ?? parseDecimal(text)) : parseDecimal(text);
    if (size === null || size.num < 0n)
      say(path, `“${text}” is no length. Write it like ${file.unit === 'in' ? '12-3/8' : '1240 or 1240.5'}.`);
    return size ?? exact(0);
  };
  const remnants = file.remnants ?? [];
  const exacts = [
    read(file.kerf, 'kerf'),
    read(file.ends ?? 0, 'ends'),
    read(file.keep ?? 0, 'keep'),
    ...file.stock.map((each, index) => read(each.length, 'stock', index, 'length')),
    ...remnants.map((each, index) => read(each.length, 'remnants', index, 'length')),
    ...file.pieces.map((each, index) => read(each.length, 'pieces', index, 'length')),
  ];
  const units = wholeUnits(exacts);
  if (units === null) say([], 'These lengths have no common unit that is coarse enough. Round them.');
  const prices = file.stock.map(({ price = '0' }, index) => {
    const pence = multiply(parseDecimal(price) ?? exact(-1), exact(100));
    if (pence.den !== 1n || pence.num < 0n)
      say(['stock', index, 'price'], `“${price}” is no price. Write it like 26.90.`);
    return Number(pence.num);
  });
  keysTwice([...file.stock, ...remnants]).forEach((index) =>
    say(
      index < file.stock.length ? ['stock', index, 'key'] : ['remnants', index - file.stock.length, 'key'],
      'This key stands there twice. Give each length one of its own.',
    ),
  );
  keysTwice(file.pieces).forEach((index) =>
    say(['pieces', index, 'key'], 'This key stands there twice. Give each piece one of its own.'),
  );
  const [kerf = 0, ends = 0, keep = 0, ...lengths] = units?.whole ?? [];
  const problem: CuttingProblem = {
    name: file.name ?? '',
    scale: units?.scale ?? 1,
    stock: [
      ...file.stock.map(({ key, count: there = null }, index) => ({
        key,
        length: lengths[index] ?? 0,
        count: there,
        isRemnant: false,
        price: prices[index] ?? 0,
        ends,
      })),
      ...remnants.map(({ key, count: there = 1 }, index) => ({
        key,
        length: lengths[file.stock.length + index] ?? 0,
        count: there,
        isRemnant: true,
        price: 0,
        // Its ends were cut when it became one.
        ends: 0,
      })),
    ],
    pieces: file.pieces.map((piece, index) => ({
      key: piece.key,
      length: lengths[file.stock.length + remnants.length + index] ?? 0,
      count: piece.count,
      wantedFor: piece.for ?? '',
    })),
    kerf,
    worthKeeping: file.keep === undefined ? null : keep,
  };
  if (faults.length > 0) return err(faults);
  problem.pieces.forEach((piece, index) => {
    if (piece.length === 0) say(['pieces', index, 'length'], 'A piece has a length above 0.');
  });
  const long = new Set(tooLong(problem).map(({ key }) => key));
  problem.pieces.forEach(({ key, count: wanted }, index) => {
    if (wanted > 0 && long.has(key))
      say(
        ['pieces', index, 'length'],
        'No stock is long enough for this piece with its ends. Add a longer one.',
      );
  });
  return faults.length > 0 ? err(faults) : ok({ problem, published: null });
};

const keysTwice = (rows: readonly { readonly key: string }[]): readonly number[] => {
  const seen = new Set<string>();
  return rows.flatMap(({ key }, index) => {
    if (seen.has(key)) return [index];
    seen.add(key);
    return [];
  });
};
