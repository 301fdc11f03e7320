/** Does every reference name something, of the right kind, at positions that it has? */
import { nearestWord } from '@/lib/domain/base/nearest';
import type { Key } from '@/lib/domain/base/vocabulary';
import { linksOf } from './check-links';
import type { Link, Target } from './check-links';
import type { PlanReading, Read } from './check-reading';
import type { PlanDocument, Repeat } from './document';
import type { Need } from './notation';
import { positionsMeant, positionsOf } from './positions';
import { problem } from './problem';
import type { Problem } from './problem';

/** Looking for the nearest word costs a pass over all keys, so a plan full of strangers gets no more of them. */
const MOST_SUGGESTIONS = 200;

type Known = Readonly<Record<Target, ReadonlySet<Key>>>;

export const checkReferences = (reading: PlanReading): Problem[] => {
  const known = knownKeys(reading.document);
  let suggestions = 0;
  const nearest = (key: Key, wanted: readonly Target[]): string => {
    suggestions += 1;
    if (suggestions > MOST_SUGGESTIONS) return '';
    return (
      nearestWord(
        key,
        wanted.flatMap((target) => [...known[target]]),
      ) ?? ''
    );
  };
  return [
    ...linksOf(reading).flatMap((link) => checkLink(reading.document, known, link, nearest)),
    ...checkPhotos(reading),
  ];
};

/** The elements of each kind; the order is that in which a wrong kind is told. */
const knownKeys = (document: PlanDocument): Known => {
  const keys = (record: Readonly<Record<Key, unknown>> | undefined): ReadonlySet<Key> =>
    new Set(Object.keys(record ?? {}));
  return {
    stage: keys(document.stages),
    operation: keys(document.operations),
    joint: keys(document.joints),
    check: keys(document.checks),
    stopgap: keys(document.stopgaps),
    condition: keys(document.conditions),
    part: keys(document.parts),
    item: keys(document.items),
    caution: keys(document.cautions),
  };
};

const TARGETS: readonly Target[] = [
  'stage',
  'operation',
  'joint',
  'check',
  'stopgap',
  'condition',
  'part',
  'item',
  'caution',
];

/** What a bare need on such a thing must be written as. */
const IN_FULL: Readonly<Partial<Record<Target, (key: Key) => string>>> = {
  joint: (key) => `${key} final`,
  stopgap: (key) => `${key} out`,
  condition: (key) => `+${key}`,
  part: (key) => `part ${key}`,
};

const checkLink = (
  document: PlanDocument,
  known: Known,
  link: Link,
  nearest: (key: Key, wanted: readonly Target[]) => string,
): readonly Problem[] => {
  const { path, ref, wanted, onKey } = link;
  const kind = wanted.find((target) => known[target].has(ref.key));
  if (kind !== undefined) return checkPositions(document, link, kind);
  const wrong = TARGETS.find((target) => known[target].has(ref.key));
  const details = { key: ref.key, wanted: wanted.join(' or ') };
  if (wrong === undefined)
    return [
      problem('reference-dangling', path, { ...details, nearest: nearest(ref.key, wanted) }, { onKey }),
    ];
  const write = link.isBareNeed ? IN_FULL[wrong]?.(ref.key) : undefined;
  return [
    write === undefined
      ? problem('reference-wrong-kind', path, { ...details, kind: wrong }, { onKey })
      : problem('need-incomplete', path, { key: ref.key, kind: wrong, write }, { onKey }),
  ];
};

/** An own property only, so that `constructor` finds nothing. */
const entryIn = <E>(record: Readonly<Record<Key, E>> | undefined, key: Key): E | undefined =>
  record !== undefined && Object.hasOwn(record, key) ? record[key] : undefined;

const repeatOf = (document: PlanDocument, kind: Target, key: Key): Repeat | undefined => {
  if (kind === 'operation') return entryIn(document.operations, key)?.repeat;
  if (kind === 'joint') return entryIn(document.joints, key)?.repeat;
  return kind === 'check' ? entryIn(document.checks, key)?.repeat : undefined;
};

/** More than this many of one thing on a car is a slip of the pen, and would fill the memory. */
export const MOST_REPEATS = 99;

export const isUsableRepeat = (repeat: Repeat | undefined): boolean =>
  typeof repeat !== 'number' || (Number.isInteger(repeat) && repeat >= 1 && repeat <= MOST_REPEATS);

const checkPositions = (document: PlanDocument, link: Link, kind: Target): readonly Problem[] => {
  const { path, ref, from } = link;
  const target = repeatOf(document, kind, ref.key);
  const referrer = from === 'all' ? undefined : from;
  if (!isUsableRepeat(target) || !isUsableRepeat(referrer)) return [];
  const positions = positionsOf(target).filter((each) => each !== null);
  if (ref.position !== null && positionsMeant(ref, target, referrer, null) === null) {
    const details = { key: ref.key, position: ref.position, positions: positions.join(', ') };
    return [problem('position-unknown', path, details)];
  }
  const isSettled = positionsOf(referrer).every((at) => positionsMeant(ref, target, referrer, at) !== null);
  if (isSettled) return [];
  return [problem('position-unsettled', path, { key: ref.key, positions: positions.join(', ') })];
};

/** A photo that is needed must be one that the operation's body asks for; a check takes any. */
const checkPhotos = (reading: PlanReading): readonly Problem[] =>
  allNeeds(reading).flatMap(({ value, path }) => {
    if (value.kind !== 'photo') return [];
    const operation = reading.operations.get(value.ref.key);
    if (operation === undefined) return [];
    const slots = operation.body.flatMap((line) => (line.value.verb === 'photo' ? [line.value.ref.key] : []));
    if (slots.includes(value.slot)) return [];
    const details = { operation: operation.key, slot: value.slot };
    return [problem('photo-unknown', path, { ...details, nearest: nearestWord(value.slot, slots) ?? '' })];
  });

export const allNeeds = (reading: PlanReading): readonly Read<Need>[] => [
  ...[...reading.stages.values()].flatMap(({ needs }) => needs),
  ...[...reading.operations.values()].flatMap(({ needs }) => needs),
  ...[...reading.joints.values()].flatMap(({ finalNeeds }) => finalNeeds),
];
