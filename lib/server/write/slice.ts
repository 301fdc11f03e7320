/** The world slice and the facts of one command, read under its lock. */
import 'server-only';
import { STARTS_CLOCK } from '@/lib/domain/clocks';
import type { Clock, Clocks } from '@/lib/domain/clocks';
import type { Command } from '@/lib/domain/commands';
import type { KitRow } from '@/lib/domain/car/kit-rows';
import type { Car, PartRow } from '@/lib/domain/car/rows';
import { factsWith } from '@/lib/domain/facts';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Shop } from '@/lib/domain/shop/rows';
import { stockKey } from '@/lib/domain/shop/stock';
import type { Stock } from '@/lib/domain/shop/stock';
import { stockAsked } from '@/lib/domain/touches';
import { isDonorHardwareClaim } from '@/lib/domain/donor-claims';
import { carsOfCut, isCutClaim } from '@/lib/domain/cut-claims';
import { isPurchaseClaim } from '@/lib/domain/purchase-claims';
import { isSupplyClaim } from '@/lib/domain/supply-claims';
import type { World } from '@/lib/domain/world';
import { shopDay } from '@/lib/wire/shop-day';
import type { Transaction } from '@/lib/server/database';
import type { Given } from '@/lib/server/given';
import { keepCar } from '@/lib/server/load/kept';
import type { Head, Kept } from '@/lib/server/load/kept';
import { readCars } from '@/lib/server/load/rows';
import { readShop, withTools } from '@/lib/server/load/shop';
import { readStock } from '@/lib/server/load/stock';
import { carOf, streamFor } from './claim';
import type { Locked } from './claim';

export interface Slice {
  readonly facts: Facts;
  readonly world: World;
}

/** Everything that the rules may ask, as it is under the locks of `claim` and stays until the answer is written. */
export const readSlice = async (
  tx: Transaction,
  kept: Kept,
  zone: string,
  given: Given,
  locked: Locked,
  plan: string | null,
): Promise<Slice> => {
  const { command } = given;
  const document = plan === null ? undefined : kept.plans.get(plan);
  const shop = await shopNow(tx, kept, locked);
  const released = releasedFor(command, kept, shop);
  const car = await carNow(tx, kept, command, locked);
  const there = await standing(tx, command, plan);
  const clocks = await clocksNow(tx, given);
  const photos = await photosNow(tx, command);
  const gave = await gaveNow(tx, command);
  const builds = await buildsNow(tx, command);
  const stock = await stockNow(tx, command, shop);
  const boxes = await boxesNow(tx, command);
  const slice = sliceOf(zone, given, {
    shop,
    car,
    plan,
    document,
    there,
    clocks,
    photos,
    gave,
    builds,
    stock,
    boxes,
  });
  if (released === null) return slice;
  const cars = await cutFor(tx, command);
  return { facts: { ...slice.facts, plans: released }, world: { ...slice.world, cars } };
};

interface Read {
  readonly shop: Shop;
  readonly car: Car | null;
  readonly plan: string | null;
  readonly document: PlanDocument | undefined;
  readonly there: readonly Standing[];
  readonly clocks: Clocks;
  readonly photos: Facts['photos'];
  readonly gave: Facts['given'];
  readonly builds: Facts['builds'];
  readonly stock: Stock;
  readonly boxes: Facts['boxes'];
}

const sliceOf = (
  zone: string,
  { command, now, actor, device, lastContact, isInOrder }: Given,
  { shop, car, plan, document, there, clocks, photos, gave, builds, stock, boxes }: Read,
): Slice => {
  const occupancy = plan === null || document === undefined ? {} : { [plan]: byStage(document, there) };
  const moment = { now, doneAt: command.doneAt, lastContact, isInOrder, actor, device };
  return {
    facts: factsWith(
      shop,
      { occupancy, clocks, photos, given: gave, builds, boxes },
      plansFor(command, shop, plan, document),
      moment,
      shopDay(zone),
    ),
    world: { shop, cars: car === null ? {} : { [car.id]: car }, stock },
  };
};

export interface Foreseen extends Slice {
  readonly car: string;
  readonly head: Head;
}

/**
 * The same from what is kept alone, before anything is locked: null where something of it is not kept, or where the
 * rules ask for more than the car and the shop.
 */
export const foreseenSlice = (
  kept: Kept,
  zone: string,
  given: Given,
  plan: string | null,
): Foreseen | null => {
  const { command } = given;
  const id = carOf(command);
  if (id === null || streamFor(command) === 'shop') return null;
  const [shop, car, head] = [kept.shop, kept.cars.get(id), kept.heads.get(id)];
  if (shop === null || car === undefined || head?.version !== car.version) return null;
  const { type } = command.claim;
  if (giverOf(command) !== null || stockAsked(command.claim, shop).length > 0) return null;
  if (type === 'advance-car' || STARTS_CLOCK.has(type) || photosIn(command).length > 0) return null;
  const document = plan === null ? undefined : kept.plans.get(plan);
  const read = {
    shop,
    car,
    plan,
    document,
    there: [],
    clocks: {},
    photos: {},
    gave: {},
    builds: {},
    stock: {},
    boxes: [],
  };
  return { ...sliceOf(zone, given, read), car: id, head };
};

/**
 * Who stands where, of the cars on this plan: stages may share a room. Asked only where the rules do, and only now that
 * the rooms are locked: whoever waited for one must see who went in meanwhile.
 */
const standing = async (
  tx: Transaction,
  { claim }: Command,
  plan: string | null,
): Promise<readonly Standing[]> =>
  claim.type === 'advance-car' && plan !== null
    ? tx.$queryRaw<Standing[]>`SELECT id, stage FROM car WHERE plan = ${plan} AND NOT delivered`
    : [];

interface Standing {
  readonly id: string;
  readonly stage: number;
}

const byStage = (document: PlanDocument, there: readonly Standing[]): Facts['occupancy'][string] =>
  Object.fromEntries(
    Object.keys(document.stages).map((key, index) => [
      key,
      there.flatMap(({ id, stage }) => (stage === index ? [id] : [])),
    ]),
  );

/** What the actor is at, on any car. Asked where the rules do, under the lock of the actor's clock. */
const clocksNow = async (tx: Transaction, { command, actor }: Given): Promise<Clocks> =>
  STARTS_CLOCK.has(command.claim.type)
    ? {
        [actor]: await tx.$queryRaw<Clock[]>`
          SELECT car, key AS operation FROM car_operation
          WHERE status = 'running' AND row -> 'present' @> to_jsonb(${actor}::text) ORDER BY car, key`,
      }
    : {};

/** Those that the command names. They are put in once and never taken out, so that no lock is needed. */
const photosNow = async (tx: Transaction, command: Command): Promise<Facts['photos']> => {
  const named = photosIn(command);
  if (named.length === 0) return {};
  const held = await tx.photo.findMany({
    where: { sha256: { in: [...named] } },
    select: { sha256: true, car: true, copySha256: true },
  });
  return Object.fromEntries(held.map(({ sha256, car, copySha256 }) => [sha256, { car, copy: copySha256 }]));
};

/** What the named car gave up: asked where a part is said to come off it. */
const gaveNow = async (tx: Transaction, command: Command): Promise<Facts['given']> => {
  const giver = giverOf(command);
  if (giver === null) return {};
  const rows = await tx.$queryRaw<{ part: string; row: PartRow }[]>`
    SELECT key AS part, row FROM car_part WHERE car = ${giver} AND state = 'taken'`;
  return {
    [giver]: Object.fromEntries(rows.map(({ part, row: { takenFor, at } }) => [part, { takenFor, at }])),
  };
};

/** The plan of the car that a claim about the shop names; a car keeps its plan, so that no lock is needed. */
const buildsNow = async (tx: Transaction, { claim }: Command): Promise<Facts['builds']> => {
  if (claim.type !== 'keep-donor-hardware') return {};
  const car = await tx.car.findUnique({ where: { id: claim.donorOf }, select: { id: true, plan: true } });
  return car === null ? {} : { [car.id]: car.plan };
};

const giverOf = ({ claim }: Command): string | null =>
  claim.type === 'receive-part' ? (claim.from ?? null) : null;

/**
 * The places that a claim about stock asks for, as they are, and held: whoever counts on a car shares the shop's lock with others
 * that take from them.
 */
const stockNow = async (tx: Transaction, { claim }: Command, shop: Shop): Promise<Stock> => {
  const asked = stockAsked(claim, shop);
  return asked.length === 0
    ? {}
    : readStock(
        tx,
        asked.map(({ item, lot }) => stockKey({ item, lot: lot ?? null })),
      );
};

/** What lies in boxes: a bin that is said to be down holds none of it. */
const boxesNow = async (tx: Transaction, { claim }: Command): Promise<Facts['boxes']> => {
  if (claim.type !== 'pick-kit' || claim.emptied === undefined) return [];
  const found = await tx.$queryRaw<{ car: string; row: KitRow }[]>`
    SELECT k.car, k.row FROM car_kit k JOIN car c ON c.id = k.car WHERE NOT c.delivered ORDER BY k.car, k.key`;
  return found.flatMap(({ car, row }) => row.lines.map((line) => ({ car, ...line })));
};

const photosIn = ({ claim }: Command): readonly string[] =>
  claim.type === 'add-photo' ? [claim.hash] : 'photos' in claim ? (claim.photos ?? []) : [];

/** A car is begun on a released revision only; one that is merely kept is not there for it. */
const plansFor = (
  command: Command,
  shop: Shop,
  plan: string | null,
  document: PlanDocument | undefined,
): Readonly<Record<string, PlanDocument>> => {
  if (plan === null || document === undefined) return {};
  return command.claim.type === 'start-car' && shop.plans[plan] === undefined ? {} : { [plan]: document };
};

/** Whoever names items, or cars that want pieces of them, is judged by those of all released plans, which `runCommand` has read before. */
const releasedFor = (
  { claim }: Command,
  { plans }: Kept,
  shop: Shop,
): Readonly<Record<string, PlanDocument>> | null =>
  isSupplyClaim(claim) || isPurchaseClaim(claim) || isDonorHardwareClaim(claim) || isCutClaim(claim)
    ? Object.fromEntries([...plans].filter(([hash]) => shop.plans[hash] !== undefined))
    : null;

/** Those for which something is sawn. Their work may go on meanwhile: what they want cut is a claim's measure, and changes no row of theirs. */
const cutFor = async (tx: Transaction, { claim }: Command): Promise<World['cars']> =>
  isCutClaim(claim)
    ? Object.fromEntries((await readCars(tx, carsOfCut(claim))).map((car) => [car.id, car]))
    : {};

const shopNow = async (tx: Transaction, kept: Kept, { shopVersion, tool }: Locked): Promise<Shop> => {
  const shop = kept.shop?.version === shopVersion ? kept.shop : await readShop(tx, kept);
  return tool === null ? shop : withTools(shop, [tool]);
};

const carNow = async (tx: Transaction, kept: Kept, command: Command, locked: Locked): Promise<Car | null> => {
  const id = carOf(command);
  if (id === null || locked.isNew) return null;
  const before = kept.cars.get(id);
  if (before?.version === locked.version) return before;
  const [car] = await readCars(tx, [id]);
  if (car === undefined) return null;
  keepCar(kept, car);
  return car;
};
