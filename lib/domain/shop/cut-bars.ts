/** A cut plan as it is sawn and drawn: each bar by itself, with where every piece begins and ends on it. */
import type { CarId } from '@/lib/domain/base/vocabulary';
import { restOf } from './cutting';
import type { CuttingPlan, CuttingProblem } from './cutting';
import { pieceKey } from './cut-list';
import type { MarkedPiece } from './cut-list';

export interface LaidPiece {
  readonly mark: string;
  readonly car: CarId;
  readonly from: number;
  readonly to: number;
}

/** All lengths are whole numbers of the problem’s unit, measured from the left end. */
export interface LaidBar {
  readonly stock: string;
  readonly isRemnant: boolean;
  readonly length: number;
  /** What is cut away at each of its ends. */
  readonly ends: number;
  /** Longest first, with a cut behind each. */
  readonly pieces: readonly LaidPiece[];
  /** Goes back into the rack; null where nothing is left that is worth it. */
  readonly keep: { readonly from: number; readonly length: number } | null;
}

/** Remnants first, then new lengths, as the plan has them. */
export const laidBars = (
  problem: CuttingProblem,
  plan: CuttingPlan,
  marked: readonly MarkedPiece[],
): readonly LaidBar[] => {
  const stocks = new Map(problem.stock.map((stock) => [stock.key, stock]));
  const lengths = new Map(problem.pieces.map(({ key, length }) => [key, length]));
  const named = new Map(
    marked.flatMap(({ mark, cars }) => cars.map(({ car }) => [pieceKey(mark, car), { mark, car }])),
  );
  const bars = plan.flatMap(({ stock: key, times, pieces }): readonly LaidBar[] => {
    const stock = stocks.get(key);
    if (stock === undefined) return [];
    const onBar = pieces
      .flatMap(({ piece, count }) => {
        const name = named.get(piece);
        const length = lengths.get(piece) ?? 0;
        return name === undefined ? [] : Array.from({ length: count }, () => ({ ...name, length }));
      })
      .sort((a, b) => b.length - a.length || (a.mark < b.mark ? -1 : a.mark > b.mark ? 1 : 0));
    const ends = stock.ends / 2;
    let at = ends;
    const laid = onBar.map(({ mark, car, length }): LaidPiece => {
      const from = at;
      at = from + length + problem.kerf;
      return { mark, car, from, to: from + length };
    });
    const rest = restOf(
      problem.kerf,
      stock,
      onBar.map(({ length }) => length),
    );
    const isKept = problem.worthKeeping !== null && rest > 0 && rest >= problem.worthKeeping;
    const bar: LaidBar = {
      stock: key,
      isRemnant: stock.isRemnant,
      length: stock.length,
      ends,
      pieces: laid,
      keep: isKept ? { from: at, length: rest } : null,
    };
    return Array.from({ length: times }, () => bar);
  });
  return [...bars.filter(({ isRemnant }) => isRemnant), ...bars.filter(({ isRemnant }) => !isRemnant)];
};
