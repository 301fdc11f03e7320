/** Reads the log, the newest first: what was accepted with all it brought, and what was refused. */
import 'server-only';
import { COMMANDS, SIGNS } from '@/lib/domain/authority';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { CarId } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { Claim, ClaimType } from '@/lib/domain/commands';
import type { Event, ShopEvent } from '@/lib/domain/events';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Shop } from '@/lib/domain/shop/rows';
import { upcast } from '@/lib/domain/upcast';
import type { StoredEvent } from '@/lib/domain/upcast';
import type { Database } from '@/lib/server/database';
import { tagIn } from '@/lib/server/queries/board/words';
import { shopDay } from '@/lib/wire/shop-day';
import { wordsFrom } from '@/lib/wire/views/event-words';
import type { LogEntry, LogKind } from '@/lib/wire/views/log';
import { namesOf } from '@/lib/wire/views/names';
import { withTimes } from '@/lib/wire/views/when';
import type { Chosen } from './car/options';
import { logClock } from './log/clock';
import { entryOf } from './log/entries';
import type { Telling, Told } from './log/entries';

export const PAGE = 50;

export interface LogAsked {
  readonly page: number;
  readonly kind: LogKind | 'everything';
  readonly by: string | null;
}

/** The last few things that happened, for the car's page. */
export const lately = async (
  db: Database,
  { shop, car, plan, zone, now }: { shop: Shop; car: Car; plan: CompiledPlan; zone: string; now: string },
  count = 8,
): Promise<readonly LogEntry[]> => {
  const telling = tellingOf(shop, car, plan, zone, now);
  const where = { car: car.id, ...whereAsked([car], { page: 1, kind: 'everything', by: null }) };
  return (await read(db, where, 0, count)).map((told) => entryOf(told, telling));
};

/** Who chose the car's options and when: with its beginning, or later. */
export const chosenOn = async (db: Database, id: CarId): Promise<Chosen> => {
  const stored = await db.event.findMany({
    where: { streamId: `car:${id}`, type: { in: ['car-started', 'option-chosen'] } },
    orderBy: { version: 'asc' },
    select: { body: true },
  });
  const chosen: Record<string, Chosen[string]> = {};
  for (const { body } of stored) {
    const event = eventIn(body);
    const act = { by: event.meta.by, at: event.meta.at };
    if (event.type === 'option-chosen') chosen[event.option] = act;
    if (event.type === 'car-started') for (const option of Object.keys(event.options)) chosen[option] = act;
  }
  return chosen;
};

/** What one car's entries are worded with. */
export const tellingOf = (shop: Shop, car: Car, plan: CompiledPlan, zone: string, now: string): Telling => {
  const inPlan = namesOf(plan.document);
  const nameOf = (key: string): string | null =>
    inPlan(key) ?? shop.people[key]?.name ?? shop.tools[key]?.name ?? null;
  return {
    nameOf,
    spoken: withTimes(zone, shopDay(zone)(now)),
    words: wordsFrom({
      nameOf: inPlan,
      people: shop.people,
      stages: plan.stages,
      signatures: car.signatures,
    }),
    car: car.chassis,
    tag: tagIn(shop.people),
    signatures: car.signatures,
    clock: logClock(zone, shopDay(zone)(now)),
  };
};

export type Where = NonNullable<NonNullable<Parameters<Database['command']['findMany']>[0]>['where']>;

/** The filters, over these cars. A pause where nothing ran was accepted and changed nothing: no entry. */
export const whereAsked = (cars: readonly Car[], { kind, by }: LogAsked): Where => ({
  ...(by === null ? {} : { actor: by }),
  ...(kind === 'refused'
    ? { outcome: 'refused' }
    : kind === 'everything'
      ? { OR: [{ outcome: 'refused' }, { events: { some: {} } }] }
      : { outcome: 'accepted', events: { some: {} }, ...kindWhere(cars, kind) }),
});

const typesOf = (isMeant: (type: ClaimType) => boolean): string[] =>
  (Object.keys(COMMANDS) as ClaimType[]).filter(isMeant);

const kindWhere = (cars: readonly Car[], kind: Exclude<LogKind, 'refused'>): Where => {
  switch (kind) {
    case 'signatures':
      return { type: { in: typesOf((type) => SIGNS.has(type)) } };
    case 'warnings':
      return { type: { in: typesOf((type) => COMMANDS[type].kind === 'warning') } };
    case 'moves':
      return { type: { in: ['start-car', 'advance-car', 'send-back', 'deliver-car'] } };
    case 'struck':
      return {
        OR: [
          { type: 'strike-signature' },
          {
            id: {
              in: cars.flatMap(({ signatures }) =>
                Object.entries(signatures)
                  .filter(([, row]) => row.struck !== null)
                  .map(([id]) => id),
              ),
            },
          },
        ],
      };
  }
};

/** With the car that it is about, and what it did to the shop's books. */
export interface ToldOf extends Told {
  readonly car: CarId | null;
  readonly shopEvents: readonly ShopEvent[];
}

export const read = async (
  db: Database,
  where: Where,
  skip: number,
  take: number,
): Promise<readonly ToldOf[]> => {
  const rows = await db.command.findMany({
    where,
    orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }],
    skip,
    take,
    select: {
      id: true,
      car: true,
      type: true,
      actor: true,
      present: true,
      device: true,
      receivedAt: true,
      outcome: true,
      answer: true,
      events: { select: { body: true }, orderBy: { version: 'asc' } },
    },
  });
  return rows.map((row) => {
    const events = row.events.map(({ body }) => eventIn(body));
    return {
      id: row.id,
      car: row.car,
      // Only `runCommand` writes here, and it knows no other types.
      type: row.type as ClaimType,
      actor: row.actor,
      present: row.present,
      device: row.device,
      receivedAt: row.receivedAt.toISOString(),
      refusals: row.outcome === 'refused' ? refusalsIn(row.answer) : null,
      claim: row.outcome === 'refused' ? claimIn(row.answer) : null,
      events: events.filter((event) => event.stream === 'car'),
      shopEvents: events.filter((event) => event.stream === 'shop'),
    };
  });
};

/** Bodies are canonical JSON of what `runCommand` wrote: an event in its place of its stream. */
const eventIn = (body: string): Event => {
  const { event } = JSON.parse(body) as { readonly event: StoredEvent };
  return upcast(event);
};

const refusalsIn = (answer: unknown): readonly Refusal[] =>
  typeof answer === 'object' && answer !== null && 'refusals' in answer && Array.isArray(answer.refusals)
    ? (answer.refusals as readonly Refusal[])
    : [];

/** What was claimed; null where it was refused before that was kept. */
const claimIn = (answer: unknown): Claim | null =>
  typeof answer === 'object' && answer !== null && 'claim' in answer ? (answer.claim as Claim) : null;
