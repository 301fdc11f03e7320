/** Every place where one element of a plan names another, whatever notation it is written in. */
import type { Key } from '@/lib/domain/base/vocabulary';
import type { PlanReading, Read } from './check-reading';
import type { HardwareQuantity, Repeat } from './document';
import type { BodyLine, BodyVerb, Need, Reference } from './notation';
import type { ProblemPath } from './problem';

/** What a key can name; the plural is the section of the document that holds it. */
export type Target =
  | 'stage'
  | 'operation'
  | 'joint'
  | 'check'
  | 'stopgap'
  | 'condition'
  | 'part'
  | 'item'
  | 'caution';

export interface Link {
  readonly path: ProblemPath;
  readonly ref: Reference;
  readonly wanted: readonly Target[];
  /** How often the thing that names is repeated, or `all` where every position of the other is meant anyway. */
  readonly from: Repeat | undefined | 'all';
  /** A bare need, which names a joint, a stopgap, a condition or a part too short. */
  readonly isBareNeed: boolean;
  /** The name stands as a key of the document, not under one. */
  readonly onKey: boolean;
}

const LINE_TARGET: Readonly<Record<BodyVerb, Target | null>> = {
  snug: 'joint',
  final: 'joint',
  retorque: 'joint',
  recheck: 'joint',
  open: 'joint',
  check: 'check',
  place: 'stopgap',
  out: 'stopgap',
  set: 'condition',
  clear: 'condition',
  fit: 'part',
  photo: null,
};

export const linksOf = (reading: PlanReading): readonly Link[] => [
  ...[...reading.stages.values()].flatMap(({ key, entry, needs }) => [
    ...needLinks(needs, undefined),
    ...plain(entry.sharesRoomWith, ['stages', key, 'sharesRoomWith'], 'stage'),
  ]),
  ...operationLinks(reading),
  ...jointLinks(reading),
  ...[...reading.checks.values()].flatMap(({ key, entry }) => [
    ...plain(entry.about, ['checks', key, 'about'], 'part', 'joint'),
    ...plain(entry.due, ['checks', key, 'due'], 'stage'),
    ...plain(entry.before, ['checks', key, 'before'], 'operation'),
  ]),
  ...[...reading.stopgaps.values()].flatMap(({ key, entry, slaveIn }) => [
    ...references(slaveIn, undefined, 'joint'),
    ...plain(entry.outBy, ['stopgaps', key, 'outBy'], 'stage'),
  ]),
  ...itemLinks(reading),
];

const operationLinks = (reading: PlanReading): readonly Link[] =>
  [...reading.operations.values()].flatMap(({ key, entry, needs, body, covers }) => [
    ...plain(entry.stage, ['operations', key, 'stage'], 'stage'),
    ...plain(entry.due, ['operations', key, 'due'], 'stage'),
    ...plain(entry.madeOn, ['operations', key, 'madeOn'], 'part'),
    ...each(entry.cautions, ['operations', key, 'cautions'], 'caution'),
    ...needLinks(needs, entry.repeat),
    ...body.flatMap((line) => bodyLinks(line, entry.repeat)),
    ...references(covers, entry.repeat, 'joint'),
    ...hardwareLinks(entry.hardware, ['operations', key, 'hardware']),
    ...Object.keys(entry.pieces ?? {}).map((item) =>
      link({ key: item, position: null }, ['operations', key, 'pieces', item], ['item'], { onKey: true }),
    ),
  ]);

const jointLinks = (reading: PlanReading): readonly Link[] =>
  [...reading.joints.values()].flatMap(({ key, entry, finalNeeds, disturbs }) => [
    ...plain(entry.due, ['joints', key, 'due'], 'stage'),
    ...plain(entry.before, ['joints', key, 'before'], 'operation'),
    ...needLinks(finalNeeds, entry.repeat),
    ...references(disturbs, entry.repeat, 'joint'),
    ...each(entry.clears, ['joints', key, 'clears'], 'condition'),
    ...each(entry.loadedBy, ['joints', key, 'loadedBy'], 'condition'),
    ...hardwareLinks(entry.hardware, ['joints', key, 'hardware']),
  ]);

const itemLinks = (reading: PlanReading): readonly Link[] =>
  Object.entries(reading.document.items ?? {}).flatMap(([key, entry]) =>
    Object.entries(entry.substitutes ?? {}).flatMap(([other, substitute]) => {
      const path = ['items', key, 'substitutes', other];
      return [
        link({ key: other, position: null }, path, ['item'], { onKey: true }),
        ...each(substitute.onlyIn, [...path, 'onlyIn'], 'joint'),
        ...each(substitute.notIn, [...path, 'notIn'], 'joint'),
      ];
    }),
  );

const hardwareLinks = (
  hardware: Readonly<Record<Key, HardwareQuantity>> | undefined,
  path: ProblemPath,
): readonly Link[] =>
  Object.entries(hardware ?? {}).flatMap(([item, line]) => [
    link({ key: item, position: null }, [...path, item], ['item'], { onKey: true }),
    ...each(typeof line === 'number' ? [] : line.dueAgain, [...path, item, 'dueAgain'], 'operation'),
  ]);

const link = (
  ref: Reference,
  path: ProblemPath,
  wanted: readonly Target[],
  more: Partial<Pick<Link, 'from' | 'isBareNeed' | 'onKey'>> = {},
): Link => ({ path, ref, wanted, from: 'all', isBareNeed: false, onKey: false, ...more });

/** A key that stands alone, without positions. */
const plain = (key: Key | undefined, path: ProblemPath, ...wanted: Target[]): readonly Link[] =>
  key === undefined ? [] : [link({ key, position: null }, path, wanted)];

const each = (keys: readonly Key[] | undefined, path: ProblemPath, wanted: Target): readonly Link[] =>
  (keys ?? []).map((key, at) => link({ key, position: null }, [...path, at], [wanted]));

const references = (
  list: readonly Read<Reference>[],
  from: Repeat | undefined,
  wanted: Target,
): readonly Link[] => list.map(({ value, path }) => link(value, path, [wanted], { from }));

const bodyLinks = ({ value, path }: Read<BodyLine>, from: Repeat | undefined): readonly Link[] => {
  const wanted = LINE_TARGET[value.verb];
  // A photo names its own slot, not an element.
  return wanted === null ? [] : [link(value.ref, path, [wanted], { from })];
};

const needLinks = (needs: readonly Read<Need>[], from: Repeat | undefined): readonly Link[] =>
  needs.map(({ value, path }) => {
    switch (value.kind) {
      case 'bare':
        return link(value.ref, path, ['operation', 'check'], { from, isBareNeed: true });
      case 'joint':
        return link(value.ref, path, ['joint'], { from });
      case 'stopgap-out':
        return link(value.ref, path, ['stopgap'], { from });
      case 'condition':
        return link({ key: value.condition, position: null }, path, ['condition']);
      case 'wait':
        return link(value.ref, path, ['operation'], { from });
      case 'part':
        return link({ key: value.part, position: null }, path, ['part']);
      case 'photo':
        return link(value.ref, path, ['operation', 'check'], { from });
    }
  });
