/**
 * May this stand in for that, here? Directed (the plan says which item may become which, never back) and conditional: the
 * conditions that can be reckoned are reckoned, those that only a person can judge stay the plan's words. Nothing is ever
 * taken as the same by itself.
 */
import { add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key, Reuse } from '@/lib/domain/base/vocabulary';
import type { SubstituteEntry } from '@/lib/domain/plan/document';
import { nutHeight, washerThickness } from './fastener-table';
import type { NutPattern, Spread } from './fastener-table';
import type { CatalogueItem } from './item';
import { USUAL_LENGTH, judgeLength } from './length';
import type { LengthPolicy, LengthRefusal, Stack } from './length';
import type { Size } from './size';
import { compareGrades } from './size-grade';
import { familyOf, isLockNut } from './size-words';

/** Where it would stand in. What is not known is null: then it has to be measured first. */
export interface SubstitutePlace {
  /** Plan key of the joint. */
  readonly joint: Key;
  readonly critical: boolean;
  /** What the plan says of this pair; undefined where it names it nowhere. */
  readonly entry: SubstituteEntry | undefined;
  readonly isLead: boolean;
  /** What the planned bolt goes through. */
  readonly stack: Stack | null;
  /** Length of the bolt that is in, where a nut is exchanged. */
  readonly bolt: Exact | null;
  /** Free behind the planned bolt's end, and how much of it must stay free, in its unit. */
  readonly room: { readonly free: Exact; readonly atLeast: Exact } | null;
  /** The lock washer that stands with a plain nut: it goes, or comes, with it. */
  readonly lockWasher: { readonly item: Key; readonly thickness: Spread | null } | null;
  /** Height of the offered nut where no table has it (metric). */
  readonly offeredNut: Spread | null;
  readonly policy?: LengthPolicy;
}

export type SubstituteRefusal =
  | { readonly code: 'not-named'; readonly joint: Key }
  | { readonly code: 'asks-lead' }
  | { readonly code: 'not-in-critical'; readonly joint: Key }
  | { readonly code: 'other-kind'; readonly is: string; readonly wanted: string }
  | { readonly code: 'other-thread' }
  | { readonly code: 'shorter' }
  | { readonly code: 'lower-grade'; readonly is: string; readonly wanted: string }
  | { readonly code: 'grade-unknown' }
  | { readonly code: 'not-measured'; readonly what: 'grip' | 'room' | 'nut' | 'washer' }
  | { readonly code: 'fouls'; readonly left: Exact; readonly atLeast: Exact; readonly unit: Size['unit'] }
  | { readonly code: 'length'; readonly refusal: LengthRefusal };

/** What else changes with it: a screen shows these before anybody takes it. */
export type Consequence =
  /** `prevailing`: the drag is measured and added; `plain`: there is no drag any more. */
  | { readonly kind: 'method'; readonly method: 'prevailing' | 'plain' }
  | { readonly kind: 'reuse'; readonly reuse: Reuse }
  /** So much more of the bolt is taken up; below zero: less. */
  | { readonly kind: 'length'; readonly by: Exact; readonly unit: Size['unit'] }
  | { readonly kind: 'drops' | 'adds'; readonly item: Key }
  /** A stronger one is tightened as the planned one. */
  | { readonly kind: 'torque-stays'; readonly grade: string };

export interface JudgedSubstitute {
  readonly refusals: readonly SubstituteRefusal[];
  readonly consequences: readonly Consequence[];
}

/** Everything that stands against it, and everything that comes with it. */
export const judgeSubstitute = (
  asked: CatalogueItem,
  offered: CatalogueItem,
  place: SubstitutePlace,
): JudgedSubstitute => {
  const refusals: SubstituteRefusal[] = [...planRefusals(place)];
  const consequences: Consequence[] = [];
  // Without a size there is only the plan's word for it.
  if (asked.size !== null && offered.size !== null) {
    const pair = { asked: asked.size, offered: offered.size };
    refusals.push(...sameThread(pair), ...gradeRefusals(pair));
    // A stronger nut changes nothing: the torque is the bolt's.
    if (familyOf(pair.asked.kind) === 'bolt' && compareTo(pair) === 1 && pair.asked.grade !== null)
      consequences.push({ kind: 'torque-stays', grade: pair.asked.grade });
    const own = familyOf(pair.asked.kind) === 'nut' ? nutFor(pair, place) : boltFor(pair, place);
    refusals.push(...own.refusals);
    consequences.push(...own.consequences);
  }
  if (!isSameReuse(asked.reuse, offered.reuse)) consequences.push({ kind: 'reuse', reuse: offered.reuse });
  return { refusals, consequences };
};

const planRefusals = ({ entry, joint, isLead }: SubstitutePlace): readonly SubstituteRefusal[] => {
  const isNamed =
    entry !== undefined &&
    (entry.onlyIn?.includes(joint) ?? true) &&
    !(entry.notIn?.includes(joint) ?? false);
  if (!isNamed) return [{ code: 'not-named', joint }];
  return entry.asksLead === true && !isLead ? [{ code: 'asks-lead' }] : [];
};

interface Pair {
  readonly asked: Size;
  readonly offered: Size;
}

const NONE: JudgedSubstitute = { refusals: [], consequences: [] };

const sameThread = ({ asked, offered }: Pair): readonly SubstituteRefusal[] => {
  const [a, b] = [asked.thread, offered.thread];
  const isSame =
    asked.unit === offered.unit &&
    compare(asked.diameter, offered.diameter) === 0 &&
    (a === null || b === null ? a === b : compare(a.pitch, b.pitch) === 0);
  return isSame ? [] : [{ code: 'other-thread' }];
};

const compareTo = ({ asked, offered }: Pair): -1 | 0 | 1 | null =>
  asked.grade === null || offered.grade === null
    ? asked.grade === offered.grade
      ? 0
      : null
    : compareGrades(offered.grade, asked.grade, asked.unit, familyOf(asked.kind));

const gradeRefusals = (pair: Pair): readonly SubstituteRefusal[] => {
  const { asked, offered } = pair;
  switch (compareTo(pair)) {
    case null:
      return [{ code: 'grade-unknown' }];
    case -1:
      return [{ code: 'lower-grade', is: offered.grade ?? '', wanted: asked.grade ?? '' }];
    case 0:
    case 1:
      return [];
  }
};

// ---- a bolt, pin or washer for its like ----

const boltFor = ({ asked, offered }: Pair, place: SubstitutePlace): JudgedSubstitute => {
  const refusals: SubstituteRefusal[] = [];
  // A fitted shank, a shoulder, another head: no length makes up for it.
  if (asked.kind !== offered.kind || asked.note !== offered.note)
    refusals.push({ code: 'other-kind', is: offered.note ?? offered.kind, wanted: asked.note ?? asked.kind });
  if (asked.length === null || offered.length === null) return { refusals, consequences: [] };
  const order = compare(offered.length, asked.length);
  if (order < 0) refusals.push({ code: 'shorter' });
  if (order <= 0 || familyOf(asked.kind) !== 'bolt') return { refusals, consequences: [] };
  const by = subtract(offered.length, asked.length);
  refusals.push(...longer(offered.length, by, asked.unit, place));
  return { refusals, consequences: [{ kind: 'length', by, unit: asked.unit }] };
};

const longer = (
  length: Exact,
  by: Exact,
  unit: Size['unit'],
  { stack, room, policy = USUAL_LENGTH }: SubstitutePlace,
): readonly SubstituteRefusal[] => {
  const refusals: SubstituteRefusal[] = [];
  if (stack === null) refusals.push({ code: 'not-measured', what: 'grip' });
  else
    refusals.push(
      ...judgeLength(stack, { length }, policy).refusals.map((refusal): SubstituteRefusal => ({
        code: 'length',
        refusal,
      })),
    );
  if (room === null) refusals.push({ code: 'not-measured', what: 'room' });
  else {
    const left = subtract(room.free, by);
    if (compare(left, room.atLeast) < 0) refusals.push({ code: 'fouls', left, atLeast: room.atLeast, unit });
  }
  return refusals;
};

// ---- a nut for a nut ----

const nutFor = (pair: Pair, place: SubstitutePlace): JudgedSubstitute => {
  const { asked, offered } = pair;
  if (asked.kind === offered.kind && asked.note === offered.note) return NONE;
  const [was, is] = [isLockNut(asked.kind), isLockNut(offered.kind)];
  const isPlain = ({ kind, note }: Size): boolean => kind === 'nut' && note === null;
  if (!(was || isPlain(asked)) || !(is || isPlain(offered)))
    return { refusals: [{ code: 'other-kind', is: offered.kind, wanted: asked.kind }], consequences: [] };

  const consequences: Consequence[] = [];
  const refusals: SubstituteRefusal[] = [];
  if (was !== is || is) consequences.push({ kind: 'method', method: is ? 'prevailing' : 'plain' });
  if (was && !is && place.critical) refusals.push({ code: 'not-in-critical', joint: place.joint });
  const { lockWasher } = place;
  if (was !== is && lockWasher !== null)
    consequences.push({ kind: is ? 'drops' : 'adds', item: lockWasher.item });
  // What brakes a plain nut is its washer: without one it would be held by nothing.
  if (was && !is && lockWasher === null) refusals.push({ code: 'not-measured', what: 'washer' });
  const height = heightChange(pair, place, was !== is);
  if (height === null) refusals.push({ code: 'not-measured', what: 'nut' });
  else if (height.num !== 0n) consequences.push({ kind: 'length', by: height, unit: asked.unit });
  refusals.push(...stillLongEnough(pair, place, was !== is));
  return { refusals, consequences };
};

const PATTERNS: Partial<Readonly<Record<Size['kind'], NutPattern>>> = {
  nut: 'hex',
  'thin nut': 'thin',
  'insert lock nut': 'insert',
  'all-metal lock nut': 'all-metal',
};

const heightOf = ({ kind, unit, diameter }: Size): Spread | null => {
  const pattern = PATTERNS[kind];
  return unit === 'in' && pattern !== undefined ? nutHeight(pattern, diameter) : null;
};

const offeredHeight = ({ offered }: Pair, place: SubstitutePlace): Spread | null =>
  heightOf(offered) ?? place.offeredNut;
const askedHeight = ({ asked }: Pair, place: SubstitutePlace): Spread | null =>
  heightOf(asked) ?? place.stack?.nut ?? null;

const washerOf = ({ asked }: Pair, { lockWasher }: SubstitutePlace): Spread | null =>
  lockWasher?.thickness ?? (asked.unit === 'in' ? washerThickness('split', asked.diameter) : null);

/** How much more of the bolt is taken up. A lock nut stands where nut and washer stood. */
const heightChange = (pair: Pair, place: SubstitutePlace, isExchange: boolean): Exact | null => {
  const [before, after] = [askedHeight(pair, place), offeredHeight(pair, place)];
  if (before === null || after === null) return null;
  const change = subtract(after.max, before.max);
  const washer = isExchange && place.lockWasher !== null ? washerOf(pair, place) : null;
  if (washer === null) return change;
  return isLockNut(pair.offered.kind) ? subtract(change, washer.max) : add(change, washer.max);
};

/** The bolt that is in must still come through. The stack is as planned: the washer is put in or left out here. */
const stillLongEnough = (
  pair: Pair,
  place: SubstitutePlace,
  isExchange: boolean,
): readonly SubstituteRefusal[] => {
  const { stack, bolt, policy = USUAL_LENGTH } = place;
  const nut = offeredHeight(pair, place);
  if (stack === null || bolt === null) return [{ code: 'not-measured', what: 'grip' }];
  if (nut === null) return [];
  const washer = isExchange && place.lockWasher !== null ? washerOf(pair, place) : null;
  const washers =
    washer === null
      ? stack.washers
      : isLockNut(pair.offered.kind)
        ? withoutOne(stack.washers, washer)
        : [...stack.washers, washer];
  return judgeLength({ ...stack, nut, washers }, { length: bolt }, policy).refusals.map((refusal) => ({
    code: 'length',
    refusal,
  }));
};

const withoutOne = (washers: readonly Spread[], gone: Spread): readonly Spread[] => {
  const at = washers.findIndex(({ max }) => compare(max, gone.max) === 0);
  return at < 0 ? washers : washers.filter((_, index) => index !== at);
};

const isSameReuse = (a: Reuse, b: Reuse): boolean =>
  a.rule === b.rule && (a.rule !== 'times' || b.rule !== 'times' || a.times === b.times);
