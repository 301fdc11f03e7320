/** A problem of the shop as bins and widths, and patterns back as a plan that names stock and pieces. */
import type { CuttingPlan, CuttingProblem, StockLength } from '@/lib/domain/shop/cutting';
import type { Aim } from './least';
import type { Instance, Pattern } from './instance';

export interface Translated {
  readonly instance: Instance;
  /** Fewest new lengths, then least length taken: in the order in which they count. */
  readonly aims: readonly Aim[];
  readonly toPlan: (patterns: readonly Pattern[]) => CuttingPlan;
}

/** Stock of one kind: nothing tells its bars apart but their name. */
interface Group {
  readonly like: StockLength;
  readonly members: { readonly key: string; readonly count: number }[];
}

export const translate = (problem: CuttingProblem): Translated => {
  const { pieces, kerf } = problem;
  const wanted = pieces.filter(({ count }) => count > 0);
  const number = wanted.reduce((sum, { count }) => sum + count, 0);
  const lengths = [...new Set(wanted.map(({ length }) => length))].sort((a, b) => b - a);
  const unit = lengths.reduce((divisor, length) => commonDivisor(divisor, length + kerf), 0) || 1;
  const shortest = lengths.at(-1) ?? 0;
  const groups = grouped(
    problem.stock.filter((stock) => stock.length - stock.ends >= shortest),
    number,
  );
  const sumOf = ({ members }: Group): number => members.reduce((sum, { count }) => sum + count, 0);
  return {
    instance: {
      widths: lengths.map((length) => (length + kerf) / unit),
      demand: lengths.map((length) =>
        wanted.reduce((sum, piece) => sum + (piece.length === length ? piece.count : 0), 0),
      ),
      kinds: groups.map((group) => ({
        capacity: Math.floor((group.like.length - group.like.ends + kerf) / unit),
        most: Math.min(number, sumOf(group)),
      })),
    },
    aims: [aimOf(groups, ({ isRemnant }) => (isRemnant ? 0 : 1)), aimOf(groups, ({ length }) => length)],
    toPlan: (patterns) => planOf(problem, groups, lengths, patterns),
  };
};

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

const aimOf = (groups: readonly Group[], costOf: (stock: StockLength) => number): Aim => {
  const costs = groups.map(({ like }) => costOf(like));
  return { costs, step: costs.reduce(commonDivisor, 0) || 1 };
};

const grouped = (stock: readonly StockLength[], number: number): readonly Group[] => {
  const groups = new Map<string, Group>();
  for (const like of stock) {
    const { key, length, count, isRemnant, price, ends } = like;
    if (count === 0) continue;
    const alike = JSON.stringify([length, ends, isRemnant, isRemnant ? 0 : price]);
    const group = groups.get(alike) ?? { like, members: [] };
    groups.set(alike, group);
    group.members.push({ key, count: Math.min(number, count ?? number) });
  }
  return [...groups.values()];
};

/** Patterns may cover more than is wanted: whoever comes last finds no piece left, and is cut with fewer. */
const planOf = (
  { pieces }: CuttingProblem,
  groups: readonly Group[],
  lengths: readonly number[],
  patterns: readonly Pattern[],
): CuttingPlan => {
  const waiting = lengths.map((length) =>
    pieces
      .filter((piece) => piece.length === length && piece.count > 0)
      .map(({ key, count }) => ({ key, left: count })),
  );
  const stock = groups.map(({ members }) => members.map(({ key, count }) => ({ key, left: count })));
  const bars = new Map<string, CuttingPlan[number]>();
  for (const { kind, items, counts } of patterns) {
    const onBar = items.flatMap((item, k) => takeFrom(waiting[item] ?? [], counts[k] ?? 0));
    if (onBar.length === 0) continue;
    const [bar] = takeFrom(stock[kind] ?? [], 1);
    const alike = JSON.stringify([bar?.key, onBar]);
    const before = bars.get(alike);
    bars.set(alike, {
      stock: bar?.key ?? '',
      times: (before?.times ?? 0) + 1,
      pieces: onBar.map(({ key, count }) => ({ piece: key, count })),
    });
  }
  return [...bars.values()];
};

const takeFrom = (waiting: { readonly key: string; left: number }[], count: number) => {
  const taken: { key: string; count: number }[] = [];
  let open = count;
  for (const each of waiting) {
    const part = Math.min(open, each.left);
    if (part <= 0) continue;
    each.left -= part;
    open -= part;
    taken.push({ key: each.key, count: part });
  }
  return taken;
};
