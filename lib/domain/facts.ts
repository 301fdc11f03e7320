/**
 * What the shop knows when it judges a command: clock, actor, tools, lots, who stands in which stage, the plans.
 * Plain data, read by the server in the same transaction and never taken from the client; the browser and
 * `replay` hold the same shape. It never carries a PIN or a pay rate.
 */
import type { CarId, Day, Instant, Key, LotId, PersonId, ToolId } from './base/vocabulary';
import type { Car } from './car/rows';
import { clocksOf } from './clocks';
import type { Clocks } from './clocks';
import { compilePlan } from './plan/compile';
import type { CompiledPlan } from './plan/compiled';
import type { PlanDocument } from './plan/document';
import type { SupplyRows } from './shop/offer-rows';
import { boxedOn } from './shop/kit';
import type { Lot, Person, Shop } from './shop/rows';
import type { Boxed } from './shop/shelf';
import type { Adapter, Tool } from './torque/tool';
import type { World } from './world';

export interface Facts {
  /** The server's clock when it heard the command. */
  readonly now: Instant;
  /** The time that tool, qualification and suspicion are judged at (D1). */
  readonly judgedAt: Instant;
  /** `judgedAt` was put to `now`, since the device's own time could not be believed. */
  readonly clockDoubted: boolean;
  /** The shop's calendar day of `judgedAt`. */
  readonly day: Day;
  readonly actor: PersonId;
  readonly device: string | null;
  readonly people: Readonly<Record<PersonId, Person>>;
  readonly tools: Readonly<Record<ToolId, Tool>>;
  readonly adapters: Readonly<Record<string, Adapter>>;
  readonly lots: Readonly<Record<LotId, Lot>>;
  /** Cars by plan hash and the key of the stage that they stand in. */
  readonly occupancy: Readonly<Record<string, Readonly<Record<Key, readonly CarId[]>>>>;
  /** Who is at work on what, on all cars: a person has one running clock. */
  readonly clocks: Clocks;
  /** Those of the photographs that the command names which the shop keeps; null = nobody asked, and any name is taken. */
  readonly photos: Readonly<Record<string, HeldPhoto>> | null;
  /** What cars gave up for others, by the car that gave; null = nobody asked, and any word is taken. */
  readonly given: Readonly<Record<CarId, Readonly<Record<Key, GivenPart>>>> | null;
  /** Hash of the plan that a car is built by, of those that a claim about the shop names; null = nobody asked. */
  readonly builds: Readonly<Record<CarId, string>> | null;
  /** What lies in the boxes of kits, of every car: that is in no bin. Told where somebody says that a bin is down. */
  readonly boxes: readonly Boxed[];
  /** Documents of plan revisions by hash. */
  readonly plans: Readonly<Record<string, PlanDocument>>;
  /** Which of them are on the shop's books as released. */
  readonly released: Shop['plans'];
  readonly supply: SupplyRows;
}

export interface GivenPart {
  readonly takenFor: string | null;
  readonly at: Instant;
}

export interface HeldPhoto {
  readonly car: CarId;
  /** SHA-256 of the copy that is kept. */
  readonly copy: string;
}

export interface Moment {
  readonly now: Instant;
  readonly doneAt: Instant;
  /** When this device was last in touch, or null where that is not known. */
  readonly lastContact: Instant | null;
  readonly isInOrder: boolean;
  readonly actor: PersonId;
  readonly device: string | null;
}

/** D1: the device's time counts if it lies between the last contact and now and its commands are in order. */
export const judgedTime = ({
  now,
  doneAt,
  lastContact,
  isInOrder,
}: Moment): { at: Instant; doubted: boolean } => {
  const believable = isInOrder && doneAt <= now && (lastContact === null || lastContact <= doneAt);
  return believable ? { at: doneAt, doubted: false } : { at: now, doubted: true };
};

/** Facts from the shop's rows. `dayOf` is the shop's calendar, which the domain can't know. */
export const factsOf = (
  shop: Shop,
  cars: World['cars'],
  plans: Readonly<Record<string, PlanDocument>>,
  moment: Moment,
  dayOf: (at: Instant) => Day,
): Facts =>
  factsWith(
    shop,
    {
      occupancy: occupancyOf(cars, plans),
      clocks: clocksOf(Object.values(cars)),
      photos: null,
      given: givenBy(cars),
      builds: Object.fromEntries(Object.values(cars).map(({ id, plan }) => [id, plan])),
      boxes: boxedOn(Object.values(cars)),
    },
    plans,
    moment,
    dayOf,
  );

/** The same for who knows already what stands where and who is at work, and need not hold every car. */
export const factsWith = (
  shop: Shop,
  {
    occupancy,
    clocks,
    photos,
    given,
    builds,
    boxes,
  }: Pick<Facts, 'occupancy' | 'clocks' | 'photos' | 'given' | 'builds' | 'boxes'>,
  plans: Readonly<Record<string, PlanDocument>>,
  moment: Moment,
  dayOf: (at: Instant) => Day,
): Facts => {
  const judged = judgedTime(moment);
  return {
    now: moment.now,
    judgedAt: judged.at,
    clockDoubted: judged.doubted,
    day: dayOf(judged.at),
    actor: moment.actor,
    device: moment.device,
    people: shop.people,
    tools: shop.tools,
    adapters: shop.adapters,
    lots: shop.lots,
    occupancy,
    clocks,
    photos,
    given,
    builds,
    boxes,
    plans,
    released: shop.plans,
    supply: shop,
  };
};

const occupancyOf = (
  cars: World['cars'],
  plans: Readonly<Record<string, PlanDocument>>,
): Facts['occupancy'] => {
  const found: Record<string, Record<Key, CarId[]>> = {};
  for (const car of Object.values(cars)) {
    const stages = Object.keys(plans[car.plan]?.stages ?? {});
    const stage = stages[car.stage];
    if (car.delivered || stage === undefined) continue;
    const byStage = (found[car.plan] ??= {});
    (byStage[stage] ??= []).push(car.id);
  }
  return found;
};

const givenBy = (cars: World['cars']): NonNullable<Facts['given']> =>
  Object.fromEntries(
    Object.values(cars).map(({ id, parts }) => [
      id,
      Object.fromEntries(
        Object.entries(parts).flatMap(([part, { state, takenFor, at }]) =>
          state === 'taken' ? [[part, { takenFor, at }] as const] : [],
        ),
      ),
    ]),
  );

/** The car's effective plan; null only where its revision is not among the facts. */
export const planOf = (
  facts: Pick<Facts, 'plans'>,
  car: Pick<Car, 'plan' | 'options'>,
): CompiledPlan | null => {
  const document = facts.plans[car.plan];
  return document === undefined ? null : compilePlan(document, car.options);
};
