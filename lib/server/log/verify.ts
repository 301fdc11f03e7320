/**
 * Does the log still tell what happened, and do the rows say the same? Every stream's chain is hashed again and its
 * events are folded again. It finds edited, deleted, added and swapped entries, a cut tail (the stream's head still
 * counts them), and rows that say something else. Whoever rewrites all of a stream, its head and its rows is found
 * only by a seal kept elsewhere (D49).
 */
import 'server-only';
import { toRows } from '@/lib/domain/car/codec';
import type { Car } from '@/lib/domain/car/rows';
import { EMPTY_SHOP } from '@/lib/domain/shop/rows';
import { toShopRows } from '@/lib/domain/shop/codec';
import type { Event } from '@/lib/domain/events';
import { evolve } from '@/lib/domain/evolve';
import { toolUsed } from '@/lib/domain/evolve/shop';
import { summed } from '@/lib/domain/shop/stock';
import type { StockChange } from '@/lib/domain/shop/stock';
import { stockHalf } from '@/lib/domain/stock-half';
import { upcast } from '@/lib/domain/upcast';
import type { StoredEvent } from '@/lib/domain/upcast';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';
import type { Database } from '@/lib/server/database';
import { readCars, readShopRows } from '@/lib/server/load/rows';
import { chained } from './chain';
import { differences } from './differences';
import { photoFaults } from './photos';
import { stockFaults } from './stock';

export interface Fault {
  readonly stream: string;
  /** The entry from which on it can't be believed; null where it is about rows. */
  readonly version: number | null;
  readonly says: string;
}

export interface Verified {
  readonly streams: number;
  readonly entries: number;
  readonly faults: readonly Fault[];
}

interface Stored {
  readonly position: bigint;
  readonly version: number;
  readonly type: string;
  readonly command: string;
  readonly body: string;
  readonly previous: string;
  readonly hash: string;
}

interface Use {
  readonly position: bigint;
  readonly tool: string;
  readonly cycles: number;
}

/** Verifies every stream, or one car's. Read-only; holds one stream in memory at a time. */
export const verifyLog = async (db: Database, car?: string): Promise<Verified> => {
  const streams = await db.stream.findMany({
    where: car === undefined ? {} : { id: `car:${car}` },
    orderBy: { id: 'asc' },
  });
  const faults: Fault[] = [];
  const uses: Use[] = [];
  const changes: StockChange[] = [];
  let entries = 0;
  let shop: readonly Placed[] = [];
  for (const { id, version, head } of streams) {
    const read = await chainOf(db, id, { version, head });
    entries += read.entries;
    faults.push(...read.faults);
    changes.push(...summed(read.events.flatMap(({ event }) => stockHalf(event))));
    if (id === 'shop') shop = read.events;
    else faults.push(...(await carFaults(db, id, read.events, uses)));
  }
  if (car === undefined)
    faults.push(...(await shopFaults(db, shop, uses)), ...(await stockFaults(db, changes)));
  return { streams: streams.length, entries, faults };
};

interface Placed {
  readonly position: bigint;
  readonly event: Event;
}

interface Chain {
  readonly entries: number;
  readonly events: readonly Placed[];
  readonly faults: readonly Fault[];
}

const chainOf = async (
  db: Database,
  stream: string,
  kept: { readonly version: number; readonly head: string },
): Promise<Chain> => {
  const stored = await db.$queryRaw<Stored[]>`
    SELECT position, version, type, command, body, previous, hash FROM event WHERE stream = ${stream} ORDER BY version`;
  const events: Placed[] = [];
  const fault = chainFault(stream, stored);
  for (const { position, body } of stored) {
    const event = eventOf(body);
    if (event !== null) events.push({ position, event });
  }
  const last = stored.at(-1);
  const faults = fault === null ? [] : [fault];
  if ((last?.version ?? 0) !== kept.version || (last?.hash ?? '') !== kept.head)
    faults.push({
      stream,
      version: (last?.version ?? 0) + 1,
      says: `ends with entry ${String(last?.version ?? 0)}, but its head is of entry ${String(kept.version)}: something was cut off or put on`,
    });
  return { entries: stored.length, events, faults };
};

const chainFault = (stream: string, stored: readonly Stored[]): Fault | null => {
  let previous = '';
  let wanted = 1;
  for (const entry of stored) {
    const says = entryFault(stream, entry, previous, wanted);
    if (says !== null) return { stream, version: entry.version, says };
    previous = entry.hash;
    wanted += 1;
  }
  return null;
};

const entryFault = (stream: string, entry: Stored, previous: string, wanted: number): string | null => {
  if (entry.version !== wanted) return `entry ${String(wanted)} is missing`;
  if (entry.previous !== previous) return 'does not follow from the entry before it';
  if (chained(previous, entry.body) !== entry.hash) return 'its text was changed: the hash is another';
  const told = contentsOf(entry.body);
  return told?.stream === stream &&
    told.version === entry.version &&
    told.event.type === entry.type &&
    told.event.meta.command === entry.command
    ? null
    : 'its columns say something else than its text';
};

interface Contents {
  readonly stream: string;
  readonly version: number;
  readonly event: StoredEvent;
}

const contentsOf = (body: string): Contents | null => {
  try {
    return JSON.parse(body) as Contents;
  } catch {
    return null;
  }
};

const eventOf = (body: string): Event | null => {
  const contents = contentsOf(body);
  return contents === null ? null : upcast(contents.event);
};

const carFaults = async (
  db: Database,
  stream: string,
  events: readonly Placed[],
  uses: Use[],
): Promise<readonly Fault[]> => {
  let world: World = EMPTY_WORLD;
  for (const { position, event } of events) {
    world = evolve(world, event);
    if (event.type === 'joint-marked' && event.toolUse !== null) uses.push({ position, ...event.toolUse });
  }
  const id = stream.slice('car:'.length);
  const told = world.cars[id];
  const [kept] = await readCars(db, [id]);
  const photos = await photoFaults(
    db,
    id,
    events.map(({ event }) => event),
  );
  return [
    ...differences(stream, rowsOf(told), rowsOf(kept)),
    ...photos.map((says): Fault => ({ stream, version: null, says })),
  ];
};

const rowsOf = (car: Car | undefined): readonly (readonly [name: string, row: unknown])[] =>
  car === undefined ? [] : toRows(car).map(({ table, key, row }) => [`${table} ${key}`, row]);

/** Uses of a counted tool stand in the cars' streams; they are put back between the shop's own entries. */
const shopFaults = async (
  db: Database,
  events: readonly Placed[],
  uses: readonly Use[],
): Promise<readonly Fault[]> => {
  const acts = [...events, ...uses].sort((a, b) => (a.position < b.position ? -1 : 1));
  let world: World = { ...EMPTY_WORLD, shop: EMPTY_SHOP };
  for (const act of acts)
    world = 'event' in act ? evolve(world, act.event) : { ...world, shop: toolUsed(world.shop, act) };
  const { rows } = await readShopRows(db);
  const named = (list: typeof rows): readonly (readonly [string, unknown])[] =>
    list.map(({ table, key, nr, row }) => [`${table} ${key}${nr === 0 ? '' : ` ${String(nr)}`}`, row]);
  return differences('shop', named(toShopRows(world.shop)), named(rows));
};
