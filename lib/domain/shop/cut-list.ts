/**
 * What is still to be cut for the cars on the floor, item by item, and the problem that the solver is given for it. Pure and
 * exact: lengths stay what the plan says, and become whole numbers of one unit only where they are handed on.
 */
import { ONE, compare, exact, multiply, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Key, StateKey } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledOperation, CompiledPlan } from '@/lib/domain/plan/compiled';
import { parsePieces, readCut } from '@/lib/domain/plan/cut';
import type { CutTerms } from '@/lib/domain/plan/cut';
import { wholeUnits } from './cutting';
import type { CuttingProblem, StockLength } from './cutting';
import type { CutWanted } from './cut-wanted';
import { stillToSaw } from './sawn';
import type { SawnRows } from './sawn';
import { shareToCome } from './need-work';

export interface CarCuts {
  readonly wanted: readonly CutWanted[];
  /** Not counted: waits for a choice. */
  readonly undecided: readonly CutWanted[];
  /** Due again for a part of what it made: which pieces that is, only who opened it knows. */
  readonly byHand: readonly StateKey[];
}

/** What a car still needs cut: the pieces of all work that is not finished. A delivered car asks for nothing. */
export const carCuts = (plan: CompiledPlan, car: Car): CarCuts => {
  const found = { wanted: [] as CutWanted[], undecided: [] as CutWanted[], byHand: [] as StateKey[] };
  if (car.delivered) return found;
  for (const operation of plan.all.operations) {
    const pieces = piecesOf(plan, car, operation);
    const share = pieces.length === 0 ? null : shareToCome(plan, car, operation);
    if (share === null) continue;
    if (operation.undecided.length > 0) found.undecided.push(...pieces);
    else if (compare(share, ONE) < 0) found.byHand.push(operation.stateKey);
    else found.wanted.push(...pieces);
  }
  return found;
};

const piecesOf = (
  { document }: CompiledPlan,
  car: Car,
  { key, stateKey }: CompiledOperation,
): readonly CutWanted[] =>
  Object.entries(document.operations?.[key]?.pieces ?? {}).flatMap(([item, pieces]) =>
    Object.entries(pieces).flatMap(([piece, text]) => {
      const read = parsePieces(text);
      const run = car.operations[stateKey]?.run ?? 1;
      return read === null ? [] : [{ car: car.id, operation: stateKey, run, item, piece, ...read }];
    }),
  );

/** A rest from the rack. Its ends were cut when it became one. */
export interface Remnant {
  readonly key: string;
  readonly length: Exact;
}

/** Pieces of one name and one length: they are alike whatever car they are for, and carry one mark. */
export interface MarkedPiece {
  readonly mark: string;
  readonly piece: string;
  readonly length: Exact;
  readonly count: number;
  /** The work that takes it. */
  readonly operations: readonly StateKey[];
  readonly cars: readonly { readonly car: CarId; readonly count: number }[];
}

export interface CutList {
  readonly item: Key;
  readonly terms: CutTerms;
  /** Longest first. */
  readonly marked: readonly MarkedPiece[];
  /** Of the marked ones, those that no length is long enough for: they are in no problem. */
  readonly tooLong: readonly MarkedPiece[];
  /** A piece’s key is `pieceKey` of its mark and car. Null where the lengths have no common unit. */
  readonly problem: CuttingProblem | null;
}

export interface CutLists {
  readonly lists: readonly CutList[];
  /** Items whose plan says no lengths. */
  readonly withoutLengths: readonly Key[];
}

export const pieceKey = (mark: string, car: CarId): string => `${mark} ${car}`;

/**
 * One list for each item, in the order of their keys, of what these cars want and nobody has sawn. A mark is the same before and
 * after pieces of the list are sawn. Of two plans that say how an item is cut, the
 * first one’s words stand.
 */
export const cutLists = (
  plans: readonly CompiledPlan[],
  wanted: readonly CutWanted[],
  remnants: Readonly<Record<Key, readonly Remnant[]>> = {},
  sawn: SawnRows = {},
): CutLists => {
  const open = stillToSaw(wanted, sawn);
  const items = [...new Set(open.map(({ item }) => item))].sort();
  const lists: CutList[] = [];
  const withoutLengths: Key[] = [];
  for (const item of items) {
    const terms = termsOf(plans, item);
    const own = wanted.filter((each) => each.item === item);
    if (terms === null) withoutLengths.push(item);
    else lists.push(listOf(item, terms, marksOf(own, open), remnants[item] ?? []));
  }
  return { lists, withoutLengths };
};

/** How an item is cut; null where none of the plans says so. */
export const termsOf = (plans: readonly CompiledPlan[], item: Key): CutTerms | null => {
  for (const { document } of plans) {
    const cut = document.items?.[item]?.cut;
    const terms = cut === undefined ? null : readCut(cut);
    if (terms !== null) return terms;
  }
  return null;
};

const marksOf = (wanted: readonly CutWanted[], open: readonly CutWanted[]): readonly MarkedPiece[] => {
  const alike = new Map(wanted.map((each) => [alikeKey(each), each]));
  return [...alike]
    .sort(([, a], [, b]) => compare(b.length, a.length) || (a.piece < b.piece ? -1 : 1))
    .map(([key, { piece, length, item }], at) => {
      const pieces = open.filter((each) => each.item === item && alikeKey(each) === key);
      return {
        mark: markOf(at),
        piece,
        length,
        count: sumOf(pieces),
        operations: [...new Set(pieces.map(({ operation }) => operation))],
        cars: [...new Set(pieces.map(({ car }) => car))].map((car) => ({
          car,
          count: sumOf(pieces.filter((each) => each.car === car)),
        })),
      };
    })
    .filter(({ count }) => count > 0);
};

const alikeKey = ({ piece, length }: CutWanted): string =>
  JSON.stringify([piece, String(length.num), String(length.den)]);

const sumOf = (pieces: readonly { readonly count: number }[]): number =>
  pieces.reduce((sum, { count }) => sum + count, 0);

/** No I and no O: with a paint pen they are numbers. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** `A` to `Z`, then `A2` and on. */
const markOf = (at: number): string => {
  const round = Math.floor(at / LETTERS.length);
  return `${LETTERS.charAt(at % LETTERS.length)}${round === 0 ? '' : String(round + 1)}`;
};

const TWO = exact(2);

const listOf = (
  item: Key,
  terms: CutTerms,
  marked: readonly MarkedPiece[],
  remnants: readonly Remnant[],
): CutList => {
  const rooms = [
    ...terms.lengths.map((length) => subtract(length, multiply(terms.ends, TWO))),
    ...remnants.map(({ length }) => length),
  ];
  const fits = ({ length }: MarkedPiece): boolean => rooms.some((room) => compare(length, room) <= 0);
  const cut = marked.filter(fits);
  return {
    item,
    terms,
    marked,
    tooLong: marked.filter((each) => !fits(each)),
    problem: problemOf(item, terms, cut, remnants),
  };
};

const problemOf = (
  item: Key,
  { lengths, kerf, ends, keep }: CutTerms,
  marked: readonly MarkedPiece[],
  remnants: readonly Remnant[],
): CuttingProblem | null => {
  const units = wholeUnits([
    kerf,
    ends,
    keep ?? exact(0),
    ...lengths,
    ...remnants.map(({ length }) => length),
    ...marked.map(({ length }) => length),
  ]);
  if (units === null) return null;
  const [wholeKerf = 0, wholeEnds = 0, wholeKeep = 0, ...whole] = units.whole;
  const ofPieces = whole.slice(lengths.length + remnants.length);
  const stock = (key: string, at: number, isRemnant: boolean): StockLength => ({
    key,
    length: whole[at] ?? 0,
    count: isRemnant ? 1 : null,
    isRemnant,
    price: 0,
    ends: isRemnant ? 0 : 2 * wholeEnds,
  });
  return {
    name: item,
    scale: units.scale,
    kerf: wholeKerf,
    worthKeeping: keep === null ? null : wholeKeep,
    stock: [
      ...lengths.map((_, at) => stock(`new ${String(at + 1)}`, at, false)),
      ...remnants.map(({ key }, at) => stock(key, lengths.length + at, true)),
    ],
    pieces: marked.flatMap(({ mark, cars }, at) =>
      cars.map(({ car, count }) => ({
        key: pieceKey(mark, car),
        length: ofPieces[at] ?? 0,
        count,
        wantedFor: car,
      })),
    ),
  };
};
