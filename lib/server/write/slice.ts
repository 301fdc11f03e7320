/** The world slice and the facts of one command, read under its lock. */
import 'server-only';
import type { Command } from '@/lib/domain/commands';
import type { Car } from '@/lib/domain/car/rows';
import { factsWith } from '@/lib/domain/facts';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Tool } from '@/lib/domain/torque/tool';
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

interface Around {
  readonly version: number;
  readonly tool: Omit<Tool, 'suspect'> | null;
  readonly there: readonly { readonly id: string; readonly stage: number }[] | null;
}

/**
 * Everything that the rules may ask, held until the answer is written: the shop by a shared lock on its stream, so that
 * nobody removes a person or drops a tool in between; a counted tool for us alone; who stands in the stage ahead.
 */
export const readSlice = async (
  tx: Transaction,
  kept: Kept,
  zone: string,
  given: Given,
  locked: Locked,
  plan: string | null,
): Promise<Slice> => {
  const { command } = given;
  const entering = command.claim.type === 'advance-car' ? command.claim.to : null;
  const document = plan === null ? undefined : kept.plans.get(plan);
  const [around] = await tx.$queryRaw<Around[]>`
    SELECT
      (SELECT version FROM stream WHERE id = 'shop' FOR SHARE) AS version,
      (SELECT row FROM tool WHERE id = ${toolOf(command)} AND used IS NOT NULL FOR NO KEY UPDATE) AS tool,
      (SELECT json_agg(json_build_object('id', id, 'stage', stage)) FROM car
        WHERE ${entering !== null} AND plan = ${plan ?? ''} AND NOT delivered) AS there`;
  if (around === undefined) throw new Error('the shop has no stream: its migrations were not applied');
  const shop = await shopNow(tx, kept, around);
  const car = await carNow(tx, kept, command, locked);
  const occupancy = plan === null || document === undefined ? {} : { [plan]: standing(document, around) };
  const { now, actor, device, lastContact, isInOrder } = given;
  const moment = { now, doneAt: command.doneAt, lastContact, isInOrder, actor, device };
  return {
    facts: factsWith(shop, occupancy, plansFor(command, shop, plan, document), moment, shopDay(zone)),
    world: { shop, cars: car === null ? {} : { [car.id]: car } },
  };
};

/** Who stands where, of the cars on this plan: stages may share a room. */
const standing = (document: PlanDocument, { there }: Around): Facts['occupancy'][string] => {
  const found: Record<string, string[]> = {};
  for (const [index, key] of Object.keys(document.stages).entries())
    found[key] = (there ?? []).flatMap(({ id, stage }) => (stage === index ? [id] : []));
  return found;
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

const toolOf = ({ claim }: Command): string => ('tool' in claim ? (claim.tool ?? '') : '');

const shopNow = async (tx: Transaction, kept: Kept, { version, tool }: Around): Promise<Shop> => {
  const shop = kept.shop?.version === version ? kept.shop : await readShop(tx, kept);
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
