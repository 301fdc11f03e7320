/** The week’s order as a mixed-integer program: packs, their price steps, freight and minimum orders; the least money. */
import type { Offer, OrderProblem, Shipment } from '@/lib/domain/shop/order';
import { column, emptyProgram, row } from '../program';
import type { Program } from '../program';
import type { PackChoice } from './choices';
import type { Narrowing } from './narrow';
import type { Want } from './wants';

/** Packs of an offer at one price, in one shipment. */
export interface PackColumn extends PackChoice {
  readonly price: number;
  readonly column: number;
}

export interface OrderModel {
  readonly program: Program;
  readonly packs: readonly PackColumn[];
}

/** The whole order, but for what is known to be in none that is better. */
export const orderModel = (
  problem: OrderProblem,
  wants: readonly Want[],
  narrowing: Narrowing,
): OrderModel => {
  const { program, packs } = goodsModel(problem, wants, true);
  for (const shipment of distinct(wants.flatMap((want) => want.shipments)))
    chargeFreight(
      program,
      shipment,
      packs.filter((pack) => pack.shipment.key === shipment.key),
      narrowing,
    );
  tighten(program, packs, narrowing);
  return { program, packs };
};

/** Only the goods; where no freight is charged, nothing more than is wanted is worth buying. */
export const goodsModel = (
  problem: OrderProblem,
  wants: readonly Want[],
  hasFreight: boolean,
): OrderModel => {
  const program = emptyProgram();
  const packs = distinct(wants.flatMap((want) => want.shipments)).flatMap((shipment) =>
    packColumns(program, problem, wants, shipment, hasFreight),
  );
  cover(program, wants, packs);
  return { program, packs };
};

const distinct = (shipments: readonly Shipment[]): readonly Shipment[] => [
  ...new Map(shipments.map((shipment) => [shipment.key, shipment])).values(),
];

const packColumns = (
  program: Program,
  { offers }: OrderProblem,
  wants: readonly Want[],
  shipment: Shipment,
  hasFreight: boolean,
): readonly PackColumn[] => {
  const wanted = new Map<string, number>();
  for (const want of wants)
    for (const item of want.items)
      wanted.set(item, (wanted.get(item) ?? 0) + (want.shipments.includes(shipment) ? want.quantity : 0));
  return offers.flatMap((offer) => {
    const pieces = wanted.get(offer.item);
    if (offer.supplier !== shipment.supplier.key || pieces === undefined) return [];
    return stepColumns(program, shipment, offer, mostPacks(offer, pieces, shipment, hasFreight));
  });
};

/** One column for each price step, of which one is taken. */
const stepColumns = (
  program: Program,
  shipment: Shipment,
  offer: Offer,
  most: number,
): readonly PackColumn[] => {
  const isPlain = offer.steps.length === 1 && (offer.steps[0]?.fromPacks ?? 0) <= 1;
  const steps = offer.steps.map(({ fromPacks, price }, step) => {
    const last = Math.max(0, Math.min(most, (offer.steps[step + 1]?.fromPacks ?? Infinity) - 1));
    const at = column(program, price, last, true);
    if (isPlain) return { at, price, isTaken: null };
    const isTaken = column(program, 0, 1, true);
    row(program, -Infinity, 0, [
      [at, 1],
      [isTaken, -last],
    ]);
    row(program, 0, Infinity, [
      [at, 1],
      [isTaken, -fromPacks],
    ]);
    return { at, price, isTaken };
  });
  const taken = steps.flatMap(({ isTaken }) => isTaken ?? []);
  if (taken.length > 1)
    row(
      program,
      -Infinity,
      1,
      taken.map((each) => [each, 1]),
    );
  return steps.map(({ at, price }) => ({ shipment, offer, price, column: at }));
};

/** No best answer has more: enough for all who wait, and as much again as lifts the order over its highest threshold. */
const mostPacks = (
  { steps, packSize, weight }: Offer,
  wanted: number,
  { supplier }: Shipment,
  hasFreight: boolean,
): number => {
  const lowest = Math.max(1, Math.min(...steps.map(({ price }) => price)));
  const highest = hasFreight ? Math.max(supplier.minimumValue, supplier.freight.steps.at(-1)?.from ?? 0) : 0;
  const each = supplier.freight.by === 'value' ? lowest : Math.min(lowest, Math.max(1, weight));
  return Math.ceil(wanted / packSize) + Math.ceil(highest / each) + (steps.at(-1)?.fromPacks ?? 1);
};

const grouped = (
  packs: readonly PackColumn[],
  keyOf: (pack: PackColumn) => string,
): ReadonlyMap<string, readonly PackColumn[]> => {
  const groups = new Map<string, PackColumn[]>();
  for (const pack of packs) {
    const group = groups.get(keyOf(pack));
    if (group === undefined) groups.set(keyOf(pack), [pack]);
    else group.push(pack);
  }
  return groups;
};

const cover = (program: Program, wants: readonly Want[], packs: readonly PackColumn[]): void => {
  const key = (shipment: Shipment, item: string): string => JSON.stringify([shipment.key, item]);
  const sold = grouped(packs, ({ shipment, offer }) => key(shipment, offer.item));
  const drawn = new Map<string, number[]>();
  for (const want of wants) {
    const flows = want.shipments.flatMap((shipment) =>
      want.items
        .filter((item) => sold.has(key(shipment, item)))
        .map((item) => {
          const flow = column(program, 0, want.quantity, false);
          drawn.set(key(shipment, item), [...(drawn.get(key(shipment, item)) ?? []), flow]);
          return flow;
        }),
    );
    row(
      program,
      want.quantity,
      Infinity,
      flows.map((flow) => [flow, 1]),
    );
  }
  for (const [at, flows] of drawn)
    row(program, 0, Infinity, [
      ...(sold.get(at) ?? []).map(({ column: packed, offer }) => [packed, offer.packSize] as const),
      ...flows.map((flow) => [flow, -1] as const),
    ]);
};

/**
 * What follows anyway, said so that the relaxation hears it: no item costs less than its table says, nor has packs with
 * which the whole would cost more than the order that is known.
 */
const tighten = (
  program: Program,
  packs: readonly PackColumn[],
  { items, known, least }: Narrowing,
): void => {
  const room = known === null ? Infinity : known.money - least;
  const sold = grouped(packs, ({ shipment, offer }) => choiceKey(shipment, offer));
  for (const { chain, table } of items) {
    const columns = chain.choices.map(({ shipment, offer }) => sold.get(choiceKey(shipment, offer)) ?? []);
    row(
      program,
      table.least,
      Infinity,
      columns.flat().map(({ column: at, price }) => [at, price] as const),
    );
    if (room === Infinity) continue;
    const may = (index: number, count: number): boolean => table.mayHave(index, count, table.least + room);
    for (const [index, steps] of columns.entries()) {
      const highest = Math.max(0, ...steps.map(({ column: at }) => program.uppers[at] ?? 0));
      const all = Array.from({ length: highest + 1 }, (_, count) => count).filter((count) =>
        may(index, count),
      );
      const [fewest = 0, most = highest] = [all[0], all.at(-1)];
      for (const { column: at } of steps) program.uppers[at] = Math.min(program.uppers[at] ?? 0, most);
      if (fewest > 0)
        row(
          program,
          fewest,
          Infinity,
          steps.map(({ column: at }) => [at, 1] as const),
        );
    }
  }
  if (known !== null)
    row(
      program,
      least,
      known.money,
      program.costs.flatMap((cost, at) => (cost === 0 ? [] : [[at, cost] as const])),
    );
};

const choiceKey = (shipment: Shipment, offer: Offer): string => JSON.stringify([shipment.key, offer.key]);

const chargeFreight = (
  program: Program,
  shipment: Shipment,
  packs: readonly PackColumn[],
  { isOut }: Narrowing,
): void => {
  const { freight, minimumValue } = shipment.supplier;
  const value = packs.map(({ column: at, price }) => [at, price] as const);
  const measure =
    freight.by === 'value' ? value : packs.map(({ column: at, offer }) => [at, offer.weight] as const);
  const isSent = column(program, 0, 1, true);
  if (isOut(shipment, -1)) program.lowers[isSent] = 1;
  for (const { column: at } of packs)
    row(program, -Infinity, 0, [
      [at, 1],
      [isSent, -(program.uppers[at] ?? 0)],
    ]);
  if (minimumValue > 0) row(program, 0, Infinity, [...value, [isSent, -minimumValue]]);
  const steps = freight.steps.map(({ from, fee }, step) => ({
    from,
    before: (freight.steps[step + 1]?.from ?? Infinity) - 1,
    isCharged: column(program, fee, isOut(shipment, step) ? 0 : 1, true),
  }));
  row(program, 0, 0, [...steps.map(({ isCharged }) => [isCharged, 1] as const), [isSent, -1]]);
  const most = measure.reduce((sum, [at, factor]) => sum + factor * (program.uppers[at] ?? 0), 0);
  row(program, 0, Infinity, [...measure, ...steps.map(({ isCharged, from }) => [isCharged, -from] as const)]);
  row(program, -Infinity, 0, [
    ...measure,
    ...steps.map(({ isCharged, before }) => [isCharged, -Math.min(before, most)] as const),
  ]);
};
