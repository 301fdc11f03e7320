/** A car's page from rows that are loaded already. Pure, so that tests and the seed can look too. */
import type { BodyRow, CarView, RowView } from '@/lib/wire/views/car';
import type { ActRef, Desk } from '@/lib/wire/views/desk';
import type { LogEntry } from '@/lib/wire/views/log';
import { anchorOf, laterId } from '@/lib/wire/views/said-line';
import { checkThings } from './check-things';
import { donorParts } from './donor';
import { endGroups } from './ends';
import type { Stores } from '@/lib/server/queries/sign-off/lot-choices';
import { brings } from './foresee';
import { gateOf, headOf, stageViews } from './head';
import { jointThings } from './joint-things';
import {
  changeThings,
  findingThings,
  holdThings,
  plannedStopgaps,
  signatureThings,
  stopgapThings,
} from './matter-things';
import { conditionKeys, conditionRows, partRows } from './matters';
import { cautionThings, operationThings } from './operation-things';
import { optionRows } from './options';
import type { Chosen } from './options';
import { allPhotos, withPhotos } from './photos';
import { partThings, tripThings } from './part-things';
import { placeKind } from './place-kind';
import { withRemarks } from './remarks';
import { see } from './seen';
import type { Given, Seen } from './seen';
import { Acts } from './who-may';
import { nextMoment, workGroups } from './work';

export interface Reader {
  /** A signature that a link names, so that an old one can be struck too. */
  readonly signature: string | null;
  readonly lately: readonly LogEntry[];
  /** Who chose its options, and when. */
  readonly chosen: Chosen;
  /** What may be taken off the shelf for a joint or a piece of work. */
  readonly stores: Stores;
}

export const carViewOf = (given: Given, reader: Reader): CarView => {
  const seen = see(given);
  const acts = new Acts(seen);
  const anchors = new Set<string>();
  const ends = endGroups(seen, acts, anchors).map((group) => ({
    ...group,
    rows: told(seen, group.rows),
  }));
  const work = workGroups(seen, acts, anchors).map((group) => ({
    ...group,
    rows: told(seen, group.rows),
  }));
  const conditions = conditionRows(seen, acts);
  const options = optionRows(seen, acts, reader.chosen);
  const parts = told(seen, partRows(seen, acts, anchors));
  const gate = gateOf(seen, acts);
  const rows = [
    ...ends.flatMap((group) => group.rows.slice(0, group.rows.length - group.folded)),
    ...options,
  ];
  const folded = [
    ...ends.flatMap((group) =>
      group.folded === 0 ? [] : [{ id: laterId(group.kind), rows: group.rows.slice(-group.folded) }],
    ),
    ...work.map(({ id, rows: inside }) => ({ id, rows: inside })),
    { id: 'parts', rows: parts },
    { id: 'conditions', rows: conditions },
  ];
  const all = [...rows, ...folded.flatMap((group) => group.rows)];
  return {
    id: seen.car.id,
    version: seen.car.version,
    head: headOf(seen),
    stages: stageViews(seen),
    gate,
    ends,
    work,
    conditions,
    options,
    parts,
    photos: allPhotos(seen),
    donor: donorParts(seen),
    lately: reader.lately,
    desk: deskOf(seen, acts, actsIn(all, gate.acts), reader),
    places: placesOf(seen, rows, folded),
    again: nextMoment(seen),
    day: seen.facts.day,
  };
};

/** With the remarks and the photographs that stand with each. */
const told = (seen: Seen, rows: readonly RowView[]): readonly RowView[] =>
  withPhotos(seen, withRemarks(seen, rows));

const actsIn = (rows: readonly RowView[], more: readonly ActRef[]): readonly ActRef[] => [
  ...more,
  ...rows.flatMap((row) => [...row.acts, ...row.body.flatMap((line: BodyRow) => line.acts)]),
];

const deskOf = (
  seen: Seen,
  acts: Acts,
  shown: readonly ActRef[],
  { signature, stores }: Pick<Reader, 'signature' | 'stores'>,
): Desk => {
  const { car, plan, facts } = seen;
  const operations = operationThings(seen, shown, stores);
  const me = facts.people[facts.actor];
  // Made before the table of reasons is read, since each may add to it.
  const signatures = signatureThings(seen, acts, signature);
  const always = alwaysActs(seen, acts);
  return {
    car: car.id,
    chassis: car.chassis,
    colour: car.colour,
    stage: car.stage,
    me: { id: facts.actor, name: me?.name ?? facts.actor, roles: me?.roles ?? [] },
    people: seen.people.map(({ id }) => seen.tag(id)),
    cautions: cautionThings(seen, operations),
    stages: Object.fromEntries(plan.stages.map(({ key, index, name }) => [key, { number: index + 1, name }])),
    operations,
    joints: jointThings(seen, shown, stores),
    checks: checkThings(seen, shown),
    stopgaps: stopgapThings(seen),
    planned: plannedStopgaps(seen),
    findings: findingThings(seen),
    changes: changeThings(seen),
    holds: holdThings(seen),
    conditions: Object.fromEntries(
      conditionKeys(seen).map((key) => [
        key,
        {
          name: seen.nameOf(key) ?? key,
          value: car.conditions[key]?.value === true,
          ending: brings(
            seen,
            { type: 'clear-condition', car: car.id, condition: key, reason: '' },
            'condition-cleared',
          ),
        },
      ]),
    ),
    parts: partThings(seen),
    trips: tripThings(seen),
    options: Object.fromEntries(
      Object.entries(plan.document.options ?? {}).map(([key, { name, choices, usual }]) => [
        key,
        { name, choices, usual: usual ?? null },
      ]),
    ),
    signatures,
    given: Object.fromEntries(Object.entries(car.assignments).map(([job, { people }]) => [job, people])),
    cars: seen.floor.map(({ id }) => id).filter((id) => id !== car.id),
    always,
    whys: acts.whys,
    reasons: acts.reasons,
  };
};

/** What is always at hand: bad news about anything on the car, a remark, who is on it. */
const alwaysActs = (seen: Seen, acts: Acts): readonly ActRef[] => {
  const { car, plan } = seen;
  const earlier = plan.stages[car.stage - 1];
  return [
    ...acts.all(['open-joint', 'report-disturbed'], 'joint', ''),
    acts.act('fail-check', 'check', ''),
    acts.act('report-finding', 'finding', ''),
    acts.act('place-stopgap', 'stopgap', ''),
    acts.act('clear-condition', 'condition', ''),
    acts.act('take-part', 'part', ''),
    acts.act('place-hold', 'hold', ''),
    acts.act('strike-signature', 'signature', ''),
    ...(earlier === undefined ? [] : [acts.act('send-back', 'stage', earlier.key)]),
    acts.act('add-note', 'car', car.id),
    acts.act('assign', 'stage', `stage:${plan.stages[car.stage]?.key ?? ''}`),
  ];
};

interface Folded {
  readonly id: string;
  readonly rows: readonly RowView[];
}

/** The way to each anchor: what must be opened, the outermost first. A job leads to the place of its thing. */
const placesOf = (seen: Seen, rows: readonly RowView[], folded: readonly Folded[]): CarView['places'] => {
  const found: Record<string, readonly string[]> = {};
  const put = (row: RowView, way: readonly string[]): void => {
    found[row.id] = [...way, row.id];
    for (const line of row.body) if (line.id !== null) found[line.id] = [...way, row.id, line.id];
  };
  for (const row of rows) put(row, []);
  for (const group of folded) for (const row of group.rows) put(row, [group.id]);
  // The count of loose ends leads to all of them.
  found.loose = [...folded.flatMap(({ id }) => (id.startsWith(laterId('')) ? [id] : [])), 'loose'];
  for (const { id, kind, key } of seen.assessment.jobs) {
    const way = found[anchorOf(placeKind(kind), key)];
    if (way !== undefined) found[`job:${id}`] = way;
  }
  return found;
};
