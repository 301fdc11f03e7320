/** Invariant 12: the log of every release still folds, to the rows that it folded to then. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { toRows } from '@/lib/domain/car/codec';
import { evolveAll } from '@/lib/domain/evolve';
import type { Event, EventType } from '@/lib/domain/events';
import { upcast } from '@/lib/domain/upcast';
import type { StoredEvent } from '@/lib/domain/upcast';
import { EMPTY_WORLD } from '@/lib/domain/world';
import { goldenStory } from '@/tests/support/golden-story';

interface Golden {
  readonly events: readonly StoredEvent[];
  readonly shop: object;
  readonly rows: readonly unknown[];
}

const folder = 'tests/domain/golden';
const releases = readdirSync(folder).filter((name) => name.endsWith('.json'));
const read = (name: string): Golden => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')) as Golden;

describe.each(releases)('the log of release %s', (name) => {
  const golden = read(name);

  test('folds to the rows that it folded to then', () => {
    const world = evolveAll(EMPTY_WORLD, golden.events.map(upcast));
    const rows = JSON.parse(JSON.stringify(Object.values(world.cars).flatMap(toRows))) as unknown;
    expect(rows).toEqual(golden.rows);
    expect(JSON.parse(JSON.stringify(world.shop))).toMatchObject(golden.shop);
  });
});

/** Typed, so that a new kind of event does not compile before it is told of here. */
const KINDS: Readonly<Record<EventType, true>> = {
  'person-added': true,
  'person-qualified': true,
  'qualification-ended': true,
  'person-renamed': true,
  'roles-changed': true,
  'person-removed': true,
  'tool-added': true,
  'adapter-added': true,
  'tool-calibrated': true,
  'tool-suspected': true,
  'tool-tested': true,
  'plan-released': true,
  'lot-received': true,
  'lot-quarantined': true,
  'lot-cleared': true,
  'order-approved': true,
  'order-received': true,
  'order-promised': true,
  'order-line-ended': true,
  'order-credited': true,
  'stock-received': true,
  'stock-put-back': true,
  'stock-drawn': true,
  'stock-counted': true,
  'stock-put-away': true,
  'item-set': true,
  'supplier-set': true,
  'offer-set': true,
  'offer-ended': true,
  'items-imported': true,
  'offers-imported': true,
  'line-pinned': true,
  'line-unpinned': true,
  'car-started': true,
  'option-chosen': true,
  'job-assigned': true,
  'note-added': true,
  'photo-added': true,
  'operation-started': true,
  'operation-joined': true,
  'operation-paused': true,
  'operation-left': true,
  'operation-resumed': true,
  'operation-finished': true,
  'operation-due-again': true,
  'hardware-fitted': true,
  'joint-marked': true,
  'joint-rechecked': true,
  'joint-opened': true,
  'joint-doubted': true,
  'joint-over-torqued': true,
  'check-begun': true,
  'check-passed': true,
  'check-failed': true,
  'check-due-again': true,
  'check-conceded': true,
  'stopgap-placed': true,
  'stopgap-removed': true,
  'stopgap-returned': true,
  'condition-set': true,
  'condition-cleared': true,
  'part-received': true,
  'part-fitted': true,
  'part-unfitted': true,
  'part-taken': true,
  'part-condemned': true,
  'finding-opened': true,
  'finding-decided': true,
  'finding-closed': true,
  'finding-reopened': true,
  'change-asked': true,
  'change-approved': true,
  'change-declined': true,
  'wait-ended': true,
  'hold-placed': true,
  'hold-released': true,
  'signature-struck': true,
  'mark-struck': true,
  'operation-reopened': true,
  'gate-passed': true,
  'car-sent-back': true,
  'car-delivered': true,
  'kit-picked': true,
  'kit-emptied': true,
  'kit-line-reported': true,
  'remnants-counted': true,
  'donor-hardware-kept': true,
  'donor-lot-shared': true,
  'donor-recorded': true,
  'bars-sawn': true,
  'pieces-recut': true,
  'part-graded': true,
  'part-sent': true,
  'part-returned': true,
  'trip-opened': true,
  'trip-promised': true,
  'trip-billed': true,
  'rate-set': true,
  'outside-quoted': true,
};

test('there is a log of a release, and today’s story has every kind of event in it', () => {
  expect(releases.length).toBeGreaterThan(0);
  const told = new Set(goldenStory().events.map((event: Event) => event.type));
  expect(Object.keys(KINDS).filter((kind) => !told.has(kind as EventType))).toEqual([]);
});
