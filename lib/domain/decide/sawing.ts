/**
 * At the saw: what is sawn leaves the cut lists, a rest that was used leaves the rack, and what is left of a bar goes on it. Stock by
 * quantity stays: the work draws what it uses up when it finishes, so that no length counts twice.
 */
import { ZERO, add, compare, exact, multiply, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { ClaimOf } from '@/lib/domain/commands';
import { carsOfCut } from '@/lib/domain/cut-claims';
import type { ClaimedBar, ClaimedPiece, CutClaim } from '@/lib/domain/cut-claims';
import { planOf } from '@/lib/domain/facts';
import type { Facts } from '@/lib/domain/facts';
import { parseLength } from '@/lib/domain/plan/cut';
import type { CutTerms } from '@/lib/domain/plan/cut';
import { carCuts, termsOf } from '@/lib/domain/shop/cut-list';
import type { CutWanted } from '@/lib/domain/shop/cut-wanted';
import { afterBar, indexOf } from '@/lib/domain/shop/remnants';
import { isLength, lengthText, sawnOf, stillToSaw } from '@/lib/domain/shop/sawn';
import type { SawnBar, SawnPiece } from '@/lib/domain/shop/sawn';
import type { World } from '@/lib/domain/world';
import { accepted, denied } from './shop-decision';
import type { ShopDecision } from './shop-decision';

type Books = Pick<World, 'shop' | 'cars'>;

export const decideSawing = (facts: Facts, books: Books, claim: CutClaim): ShopDecision => {
  const unknown = carsOfCut(claim).filter((car) => {
    const row = books.cars[car];
    return row === undefined || planOf(facts, row) === null;
  });
  if (unknown.length > 0) return denied(unknown.map((key) => refuse('unknown-thing', { what: 'car', key })));
  const wanted = wantedBy(facts, books, claim);
  return claim.type === 'saw-bars' ? sawn(facts, books, claim, wanted) : recut(books, claim, wanted);
};

/** What the named cars want cut of the item, work by work. */
const wantedBy = (facts: Facts, { cars }: Books, claim: CutClaim): readonly CutWanted[] =>
  carsOfCut(claim).flatMap((id) => {
    const car = cars[id];
    const plan = car === undefined ? null : planOf(facts, car);
    return car === undefined || plan === null
      ? []
      : carCuts(plan, car).wanted.filter(({ item }) => item === claim.item);
  });

/** Bar by bar, each judged by what the ones before it leave. */
const sawn = (
  facts: Facts,
  { shop, cars }: Books,
  { item, bars, ...claim }: ClaimOf<'saw-bars'>,
  wanted: readonly CutWanted[],
): ShopDecision => {
  const plans = carsOfCut({ ...claim, item, bars }).flatMap((id) => {
    const car = cars[id];
    return car === undefined ? [] : (planOf(facts, car) ?? []);
  });
  const terms = termsOf(plans, item);
  if (terms === null) return denied([refuse('unknown-thing', { what: 'item that is cut', key: item })]);
  let rack = shop.remnants[item]?.lengths ?? [];
  let open = stillToSaw(wanted, shop.sawn);
  const refusals: Refusal[] = [];
  const done: SawnBar[] = [];
  for (const bar of bars) {
    const taken = bar.pieces.map((piece) => ({ piece, share: shared(open, piece) }));
    const sound = soundBar(item, terms, bar);
    refusals.push(
      ...(bar.from === 'rest' && indexOf(rack, bar.length) < 0
        ? [refuse('rest-not-there', { item, length: bar.length })]
        : []),
      ...sound.refusals,
      ...taken.flatMap(({ piece, share }) =>
        share.missing === 0
          ? []
          : [refuse('cut-not-wanted', { item, ...piece, left: piece.count - share.missing })],
      ),
    );
    open = taken.reduce((rest, { share }) => without(rest, share.pieces), open);
    const { from, length } = bar;
    const next = { from, length, pieces: taken.flatMap(({ share }) => share.pieces), left: sound.left };
    rack = afterBar(rack, next);
    done.push(next);
  }
  return refusals.length > 0 ? denied(refusals) : accepted({ type: 'bars-sawn', item, bars: done });
};

/** Pieces that a claim names, given to the work that wants them, the plan's first first. */
const shared = (
  open: readonly CutWanted[],
  { car, piece, length, count }: ClaimedPiece,
): { readonly pieces: readonly SawnPiece[]; readonly missing: number } => {
  let missing = count;
  const pieces = open
    .filter((each) => each.car === car && each.piece === piece && isLength(length, each.length))
    .flatMap((each) => {
      const part = Math.min(each.count, missing);
      missing -= part;
      const { operation, run } = each;
      return part === 0 ? [] : [{ car, operation, run, piece, length: lengthText(each.length), count: part }];
    });
  return { pieces, missing };
};

const without = (open: readonly CutWanted[], pieces: readonly SawnPiece[]): readonly CutWanted[] =>
  open.map((each) => {
    const taken = pieces.find(
      ({ car, operation, piece, length }) =>
        car === each.car &&
        operation === each.operation &&
        piece === each.piece &&
        isLength(length, each.length),
    );
    return taken === undefined ? each : { ...each, count: each.count - taken.count };
  });

/** Does it come out of the bar, and what is left of it? The last piece needs no cut behind it where less than a cut is left. */
const soundBar = (
  item: Key,
  { kerf, ends, keep }: CutTerms,
  { from, length, pieces, left }: ClaimedBar,
): { readonly refusals: readonly Refusal[]; readonly left: string | null } => {
  const whole = parseLength(length);
  if (whole === null || compare(whole, ZERO) <= 0)
    return { refusals: [unreadable(`a bar of ${item}`, length)], left: null };
  const unread = pieces.filter((each) => parseLength(each.length) === null);
  if (unread.length > 0)
    return { refusals: unread.map((each) => unreadable(each.piece, each.length)), left: null };
  const room = from === 'new' ? subtract(whole, multiply(ends, exact(2))) : whole;
  const taken = pieces.reduce(
    (sum, each) => add(sum, multiply(add(parseLength(each.length) ?? ZERO, kerf), exact(each.count))),
    ZERO,
  );
  const rest = subtract(room, taken);
  if (compare(add(rest, pieces.length === 0 ? ZERO : kerf), ZERO) < 0)
    return { refusals: [refuse('bar-too-short', { item, length, pieces: piecesWords(pieces) })], left: null };
  if (left === undefined) return { refusals: [], left: isKept(rest, keep) ? lengthText(rest) : null };
  if (left.trim() === '') return { refusals: [], left: null };
  const measured = parseLength(left);
  return measured === null || compare(measured, ZERO) <= 0 || compare(measured, whole) >= 0
    ? { refusals: [unreadable(`what is left of ${length}`, left)], left: null }
    : { refusals: [], left: left.trim() };
};

const isKept = (rest: Exact, keep: Exact | null): boolean =>
  keep !== null && compare(rest, ZERO) > 0 && compare(rest, keep) >= 0;

const unreadable = (field: string, text: string): Refusal =>
  refuse('value-unreadable', {
    field,
    text,
    wanted: 'a length with its unit, such as 640 mm, shorter than its bar',
  });

const piecesWords = (pieces: readonly ClaimedPiece[]): string =>
  pieces.map(({ piece, length, count }) => `${String(count)} × ${piece} ${length}`).join(', ');

/** Of work that is not finished; what is built in is no matter of the saw any more. */
const recut = (
  { shop }: Books,
  { item, pieces }: ClaimOf<'recut-pieces'>,
  wanted: readonly CutWanted[],
): ShopDecision => {
  let there = wanted.map((each) => ({ ...each, count: Math.min(each.count, sawnOf(shop.sawn, each)) }));
  const shares = pieces.map((piece) => {
    const share = shared(there, piece);
    there = [...without(there, share.pieces)];
    return { piece, share };
  });
  const missing = shares.filter(({ share }) => share.missing > 0);
  return missing.length > 0
    ? denied(
        missing.map(({ piece, share }) =>
          refuse('not-sawn', { item, ...piece, sawn: piece.count - share.missing }),
        ),
      )
    : accepted({ type: 'pieces-recut', item, pieces: shares.flatMap(({ share }) => share.pieces) });
};
