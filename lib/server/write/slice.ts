/** The world slice and the facts of one command, read under its lock. */
import 'server-only';
import { STARTS_CLOCK } from '@/lib/domain/clocks';
import type { Clock, Clocks } from '@/lib/domain/clocks';
import type { Command } from '@/lib/domain/commands';
import type { Car } from '@/lib/domain/car/rows';
import { factsWith } from '@/lib/domain/facts';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Shop } from '@/lib/domain/shop/rows';
import type { World } from '@/lib/domain/world';
import { shopDay } from '@/lib/wire/shop-day';
import type { Transaction } from '@/lib/server/database';
import type { Given } from '@/lib/server/given';
import { keepCar } from '@/lib/server/load/kept';
import type { Kept } from '@/lib/server/load/kept';
import { readCars } from '@/lib/server/load/rows';
import { readShop, withTools } from '@/lib/server/load/shop';
import { carOf } from './claim';
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
  const car = await carNow(tx, kept, command, locked);
  const occupancy =
    plan === null || document === undefined ? {} : { [plan]: await standing(tx, command, plan, document) };
  const { now, actor, device, lastContact, isInOrder } = given;
  const clocks = await clocksNow(tx, given);
  const photos = await photosNow(tx, command);
  const moment = { now, doneAt: command.doneAt, lastContact, isInOrder, actor, device };
  return {
    facts: factsWith(
      shop,
      { occupancy, clocks, photos },
      plansFor(command, shop, plan, document),
      moment,
      shopDay(zone),
    ),
    world: { shop, cars: car === null ? {} : { [car.id]: car } },
  };
};

/**
 * Who stands where, of the cars on this plan: stages may share a room. Asked only where the rules do, and only now that
 * the rooms are locked: whoever waited for one must see who went in meanwhile.
 */
const standing = async (
  tx: Transaction,
  { claim }: Command,
  plan: string,
  document: PlanDocument,
): Promise<Facts['occupancy'][string]> => {
  const there =
    claim.type === 'advance-car'
      ? await tx.$queryRaw<{ id: string; stage: number }[]>`
          SELECT id, stage FROM car WHERE plan = ${plan} AND NOT delivered`
      : [];
  return Object.fromEntries(
    Object.keys(document.stages).map((key, index) => [
      key,
      there.flatMap(({ id, stage }) => (stage === index ? [id] : [])),
    ]),
  );
};

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
const photosNow = async (tx: Transaction, { claim }: Command): Promise<Facts['photos']> => {
  const named =
    claim.type === 'add-photo' ? [claim.hash] : 'photos' in claim ? [...(claim.photos ?? [])] : [];
  if (named.length === 0) return {};
  const held = await tx.photo.findMany({
    where: { sha256: { in: named } },
    select: { sha256: true, car: true, copySha256: true },
  });
  return Object.fromEntries(held.map(({ sha256, car, copySha256 }) => [sha256, { car, copy: copySha256 }]));
};

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
