/** What a car cost, from its events, its plan and the shop's books: who took what for which stage, and what was planned. */
import { ONE, ZERO, add, compare, exact, multiply, subtract } from './base/exact';
import type { Exact } from './base/exact';
import type { CarId, Day, Instant, Key, StateKey } from './base/vocabulary';
import type { DoubtFacts } from './car/joint';
import { CAR_TABLES } from './car/rows';
import type { Car } from './car/rows';
import type { CarEvent, Event, EventType } from './events';
import { CLOCK_EVENTS, workSpans } from './hours';
import type { CompiledPlan } from './plan/compiled';
import { carCost } from './shop/car-cost';
import type { CarCost, CostInput, Drawing, OutsideWork, PlannedMaterial, ScrapReason } from './shop/car-cost';
import type { Catalogue } from './shop/item';
import { carNeed } from './shop/need';
import type { NeedLine } from './shop/need-line';
import { quantityOf } from './shop/stock';
import { sentWork } from './shop/outside-cost';
import { isOutside, quoteId } from './shop/outside-quotes';
import type { OutsideQuotes, PlannedOutside } from './shop/outside-quotes';
import type { PriceOf } from './shop/unit-price';
import type { HourRates } from './shop/rates';
import { drawnBy } from './stock-half';

/** The events of a car that its cost is made of; beside them what the shop took out for it (`stock-drawn`). */
export const COST_EVENTS: readonly EventType[] = [
  ...CLOCK_EVENTS,
  'hardware-fitted',
  'joint-opened',
  'kit-line-reported',
  'part-received',
];

export interface CostBooks {
  readonly catalogue: Catalogue;
  readonly facts: DoubtFacts;
  readonly priceOf: PriceOf;
  readonly rates: HourRates;
  readonly outside: readonly OutsideWork[];
  readonly quotes: OutsideQuotes;
  readonly now: Instant;
  readonly dayOf: (at: Instant) => Day;
}

export interface CostOfCar extends CarCost {
  /** Events that say nothing of what they took. */
  readonly unsaid: number;
  /** All that the plan sends to other firms, what has its price too. */
  readonly sent: readonly PlannedOutside[];
  /** Planned lines that wait for a choice. */
  readonly waiting: number;
}

/** `events`: those of `COST_EVENTS` of this car, and the shop's `stock-drawn`, in the order of time. */
export const costOfCar = (
  plan: CompiledPlan,
  car: Car,
  events: readonly Event[],
  books: CostBooks,
): CostOfCar => {
  const planned = plannedCost(plan, car, books);
  const taken = drawingsOf(plan, car.id, events, planned.boughtParts);
  const input: CostInput = {
    stages: plan.stages.length,
    drawings: lessInBoxes(taken.drawings, books.catalogue),
    worked: workedOn(plan, car.id, events, books),
    outside: books.outside,
    planned,
    priceOf: books.priceOf,
    rates: books.rates,
    today: books.dayOf(books.now),
  };
  return { ...carCost(input), unsaid: taken.unsaid, sent: planned.outside, waiting: planned.waiting };
};

// ---- the plan ----

const begun = new WeakMap<CompiledPlan, Car>();

/** The car as on its first day: what is not in yet is everything, planned re-openings too. One for all cars of an effective plan. */
const firstDay = (plan: CompiledPlan, car: Car): Car => {
  const nothing = Object.fromEntries(CAR_TABLES.map((table) => [table, {}]));
  const found = begun.get(plan) ?? { ...car, stage: 0, delivered: false, ...nothing };
  begun.set(plan, found);
  return found;
};

type Planned = CostInput['planned'] & {
  readonly boughtParts: ReadonlySet<Key>;
  readonly waiting: number;
};

const plannedCost = (plan: CompiledPlan, car: Car, books: CostBooks): Planned => {
  const { catalogue, facts } = books;
  const { lines, undecided } = carNeed(plan, firstDay(plan, car), facts, catalogue);
  // What gets lost on the shelf is found by a count and is no car's: it would never be seen as spent here.
  const counted = lines.filter(({ cause }) => cause.kind !== 'attrition');
  const decided = plan.all.operations.filter((each) => each.undecided.length === 0);
  return {
    materials: counted.map((line): PlannedMaterial => {
      const { item, quantity } = line;
      return { item, quantity, stage: stageOfLine(plan, line) };
    }),
    minutes: decided.map(({ stage, minutes, crew }) => ({ stage, minutes: minutes * Math.max(1, crew) })),
    outside: plannedOutside(plan, books.quotes),
    boughtParts: new Set(counted.flatMap(({ item, what }) => (what === 'part' ? [item] : []))),
    waiting: undecided.length,
  };
};

/** Parts that the plan expects to refurbish, at the work that fits them; one that the car's options leave out is fitted by none. */
const plannedOutside = (plan: CompiledPlan, quotes: OutsideQuotes): readonly PlannedOutside[] => {
  const { document, fitters } = plan;
  const moneyOf = (key: Key): number | null => quotes[quoteId(document.plan, key)]?.money ?? null;
  return [
    ...sentWork(plan)
      .filter(({ undecided }) => undecided.length === 0)
      .map(({ key, stateKey, stage }) => ({ key: stateKey, stage, money: moneyOf(key) })),
    ...Object.entries(document.parts ?? {}).flatMap(([key, { grade }]) => {
      const [fitter] = fitters.get(key) ?? [];
      return fitter !== undefined && grade === 'refurbish' && isOutside(document, key)
        ? [{ key, stage: fitter.stage, money: moneyOf(key) }]
        : [];
    }),
  ];
};

const stageOfLine = (plan: CompiledPlan, { before, at, cause }: NeedLine): number | null =>
  cause.kind === 'reopening'
    ? (stageOf(plan, cause.operation) ?? stageOf(plan, at))
    : (stageOf(plan, at) ?? stageOf(plan, before));

/** The stage of a piece of work, or of the work that a joint is of; a joint of none has that of its gate. */
const stageOf = (plan: CompiledPlan, key: StateKey | null): number | null => {
  if (key === null) return null;
  const joint = plan.joints.get(key);
  const operation = plan.operations.get(joint?.operation ?? key);
  return operation?.stage ?? joint?.due ?? null;
};

// ---- what happened ----

interface Taken {
  readonly drawings: readonly Drawing[];
  readonly unsaid: number;
}

const drawingsOf = (
  plan: CompiledPlan,
  car: CarId,
  events: readonly Event[],
  boughtParts: ReadonlySet<Key>,
): Taken => {
  const drawings: Drawing[] = [];
  /** Joints that got something, and why they were opened since. */
  const fitted = new Set<StateKey>();
  const parts = new Set<Key>();
  const asPlanned = new Set<string>();
  const openedBy = new Map<StateKey, StateKey | null>();
  let unsaid = 0;
  const take = (event: Event, place: Pick<Drawing, 'stage' | 'for' | 'scrap'>): void => {
    const list = drawnBy(event);
    if (list === null) unsaid += 1;
    for (const { item, lot, quantity } of list ?? [])
      drawings.push({ item, lot, quantity: quantityOf(quantity), at: event.meta.at, ...place });
  };
  for (const event of events)
    switch (event.type) {
      case 'joint-opened': {
        // The plan opens it once in a piece of work; once more in the same, or when that is due again, is somebody's reason.
        const { joint, run } = event;
        const way = `${joint} ${run?.operation ?? ''}`;
        openedBy.set(joint, run?.run === 1 && !asPlanned.has(way) ? run.operation : null);
        asPlanned.add(way);
        break;
      }
      case 'hardware-fitted': {
        const opener = openedBy.get(event.joint) ?? null;
        const isRenewed = event.cycle > 1 && fitted.has(event.joint) && opener === null;
        take(event, {
          stage: (opener === null ? null : stageOf(plan, opener)) ?? stageOf(plan, event.joint),
          for: event.joint,
          scrap: isRenewed ? 'renewed' : null,
        });
        fitted.add(event.joint);
        break;
      }
      case 'operation-finished': {
        const { operation, run } = event;
        take(event, {
          stage: stageOf(plan, operation),
          for: operation,
          scrap: run > 1 ? 'again' : null,
        });
        break;
      }
      case 'kit-line-reported':
        take(event, { stage: stageOf(plan, event.operation), for: event.operation, scrap: 'damaged' });
        break;
      case 'part-received': {
        const [work] = plan.fitters.get(event.part) ?? [];
        const { part, piece, meta } = event;
        // Off another car it cost nothing, and back from outside work it is the same piece.
        const isOther = event.from !== undefined || event.looked !== undefined;
        const isNew = !isOther && (boughtParts.has(part) || piece > 1);
        const scrap = parts.has(part) ? ('renewed' as const) : null;
        const place = { stage: work?.stage ?? null, for: part, scrap };
        const said = drawnBy(event);
        if (said !== null) take(event, place);
        // Where nobody said what it came from, it is one of what the plan buys, or a new one for a piece of the donor.
        else if (isNew) drawings.push({ item: part, lot: null, quantity: ONE, at: meta.at, ...place });
        if (isNew) parts.add(part);
        break;
      }
      case 'stock-drawn': {
        const { item, lot, quantity, reason, forCar, meta } = event;
        if (forCar !== car || reason === 'returned') break;
        const scrap: ScrapReason = reason;
        drawings.push({
          item,
          lot,
          quantity: quantityOf(quantity),
          stage: null,
          at: meta.at,
          for: null,
          scrap,
        });
        break;
      }
      default:
    }
  return { drawings, unsaid };
};

/** What lay in the box of something that the car took was paid for with the box: so much of it costs nothing more. */
const lessInBoxes = (drawings: readonly Drawing[], catalogue: Catalogue): readonly Drawing[] => {
  const boxed = new Map<Key, Exact>();
  for (const { item, quantity } of drawings)
    for (const [inside, each] of Object.entries(catalogue[item]?.comesWith ?? {}))
      boxed.set(inside, add(boxed.get(inside) ?? ZERO, multiply(quantity, exact(each))));
  return drawings.flatMap((each): readonly Drawing[] => {
    const left = boxed.get(each.item) ?? ZERO;
    if (each.scrap !== null || compare(left, ZERO) === 0) return [each];
    const covered = compare(left, each.quantity) < 0 ? left : each.quantity;
    boxed.set(each.item, subtract(left, covered));
    const quantity = subtract(each.quantity, covered);
    return compare(quantity, ZERO) === 0 ? [] : [{ ...each, quantity }];
  });
};

const workedOn = (
  plan: CompiledPlan,
  car: CarId,
  events: readonly Event[],
  { now, dayOf }: CostBooks,
): CostInput['worked'] =>
  workSpans(events.filter((each): each is CarEvent => each.stream === 'car' && each.car === car)).map(
    ({ operation, from, until }) => ({
      stage: stageOf(plan, operation),
      milliseconds: Math.max(0, Date.parse(until ?? now) - Date.parse(from)),
      day: dayOf(from),
    }),
  );
