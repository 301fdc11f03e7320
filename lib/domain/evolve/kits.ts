/** Boxes of operations: filled, emptied, used up. */
import { withPicked, withoutTaken } from '@/lib/domain/shop/kit';
import type { KitRow } from '@/lib/domain/car/kit-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';
import type { Drawn } from '@/lib/domain/shop/stock';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

const dropped = ({ kits }: Car, operation: string): Car['kits'] =>
  Object.fromEntries(Object.entries(kits).filter(([key]) => key !== operation));

const put = (car: Car, operation: string, row: KitRow): Car => ({
  ...car,
  kits:
    row.lines.length === 0 && row.reports.length === 0
      ? dropped(car, operation)
      : { ...car.kits, [operation]: row },
});

const rowBefore = (
  car: Car,
  event: CarEvent & { readonly operation: string; readonly run: number },
): KitRow => ({
  lines: [],
  reports: [],
  by: event.meta.by,
  at: event.meta.at,
  ...car.kits[event.operation],
  run: event.run,
});

export const kitPicked = (car: Car, event: Of<'kit-picked'>): Car => {
  const row = rowBefore(car, event);
  const picked = new Set(event.lines.map(({ item }) => item));
  return put(car, event.operation, {
    ...row,
    lines: withPicked(row.lines, event.lines),
    reports: row.reports.filter(({ item }) => !picked.has(item)),
    by: event.meta.by,
    at: event.meta.at,
  });
};

export const kitEmptied = (car: Car, event: Of<'kit-emptied'>): Car => {
  const row = rowBefore(car, event);
  return put(car, event.operation, { ...row, lines: withoutTaken(row.lines, event.lines) });
};

export const kitLineReported = (car: Car, event: Of<'kit-line-reported'>): Car => {
  const row = rowBefore(car, event);
  const { item, what } = event;
  return put(car, event.operation, {
    ...row,
    lines: withoutTaken(row.lines, event.lines),
    reports: [
      ...row.reports.filter((each) => each.item !== item),
      { item, what, by: event.meta.by, at: event.meta.at },
    ],
  });
};

/** What went into the car has left the box that it came from. */
export const kitUsed = (car: Car, operation: string | undefined, drawn: readonly Drawn[]): Car => {
  const row = operation === undefined ? undefined : car.kits[operation];
  return operation === undefined || row === undefined
    ? car
    : put(car, operation, { ...row, lines: withoutTaken(row.lines, drawn) });
};

/** The work is done: what is left in its box lies on the shelf again. */
export const kitOver = (car: Car, operation: string): Car =>
  car.kits[operation] === undefined ? car : { ...car, kits: dropped(car, operation) };
