/** Boxes over random picks, fits and returns: never below nothing, never more than was picked; with the shelf they are the stock. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ZERO, add, compare, parseDecimal, subtract, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Event } from '@/lib/domain/events';
import { catalogueOf } from '@/lib/domain/shop/item';
import { boxedOn } from '@/lib/domain/shop/kit';
import { openOf, shelfOf } from '@/lib/domain/shop/shelf';
import { foundBeyond, onHand } from '@/lib/domain/shop/stock';
import type { Stock } from '@/lib/domain/shop/stock';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop, Told } from '@/tests/support/shop';

const DOCUMENT = plan({
  items: {
    nut: { name: 'lock nut', reuse: 'once fitted', trace: 'lot' },
    washer: { name: 'washer' },
  },
  stages: { AX: { name: 'Axle' } },
  operations: {
    'AX-010': {
      name: 'Hang',
      stage: 'AX',
      repeatable: true,
      body: ['snug J-1'],
      consumables: { washer: '1' },
    },
  },
  joints: {
    'J-1': {
      name: 'Eye',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      hardware: { nut: 2, washer: 2 },
    },
  },
});
const CATALOGUE = catalogueOf([DOCUMENT]);
const PLACES = [
  { item: 'nut', lot: 'L-1' },
  { item: 'nut', lot: 'L-2' },
  { item: 'nut' },
  { item: 'washer' },
] as const;

const acts = (car: string): fc.Arbitrary<Told> => {
  const kit = { operation: 'AX-010', car } as const;
  const joint = { joint: 'J-1', car } as const;
  return fc.oneof(
    fc
      .record({
        at: fc.constantFrom(...PLACES),
        many: fc.integer({ min: 1, max: 3 }),
        isDown: fc.boolean(),
      })
      .map(({ at, many, isDown }): Told => ({
        type: 'pick-kit',
        ...kit,
        lines: [{ ...at, quantity: String(many) }],
        ...(isDown && { emptied: [at.item] }),
      })),
    fc
      .record({ at: fc.constantFrom(...PLACES), many: fc.integer({ min: 1, max: 6 }) })
      .map(({ at, many }): Told => ({
        type: 'empty-kit',
        ...kit,
        lines: [{ ...at, quantity: String(many) }],
      })),
    fc
      .record({
        at: fc.constantFrom(...PLACES),
        what: fc.constantFrom('wrong', 'damaged', 'missing'),
        quantity: fc.option(fc.constantFrom('1', '3'), { nil: undefined }),
      })
      .map(({ at, what, quantity }): Told => ({
        type: 'report-kit-line',
        ...kit,
        ...at,
        what,
        ...(quantity && { quantity }),
      })),
    fc.constantFrom<Told>(
      { type: 'empty-kit', ...kit },
      { type: 'start-operation', ...kit },
      { type: 'snug-joint', ...joint },
      { type: 'snug-joint', ...joint, hardware: [{ item: 'nut', lot: 'L-2' }] },
      { type: 'open-joint', ...joint },
      { type: 'finish-operation', ...kit },
      { type: 'draw-stock', item: 'nut', quantity: '2', reason: 'lost' },
      { type: 'count-stock', counts: [{ item: 'washer', counted: '5' }] },
      { type: 'receive-stock', goods: [{ item: 'washer', quantity: '7' }] },
    ),
  );
};
const story = fc.array(fc.oneof(acts('C1'), acts('C2')), { minLength: 5, maxLength: 40 });

const sumOf = (lines: readonly { readonly item: string; readonly quantity: string }[], item: string): Exact =>
  lines.reduce(
    (sum, line) => (line.item === item ? add(sum, parseDecimal(line.quantity) ?? ZERO) : sum),
    ZERO,
  );

/** Told from the log alone: all that was ever put in, less all that is said to have come out. */
const most = (events: readonly Event[], car: string, item: string): Exact =>
  events.reduce((held, event) => {
    if (event.stream !== 'car' || event.car !== car) return held;
    switch (event.type) {
      case 'kit-picked':
        return add(held, sumOf(event.lines, item));
      case 'kit-emptied':
      case 'kit-line-reported':
        return subtract(held, sumOf(event.lines, item));
      case 'operation-finished':
        return ZERO;
      default:
        return held;
    }
  }, ZERO);

/** By item, what the stock's sums say is there; what went without a word from which lot is missing from the lots. */
const held = (stock: Stock, item: string): Exact => {
  const rows = Object.values(stock).filter((row) => row.item === item);
  const all = rows.reduce((sum, row) => add(sum, onHand(row)), ZERO);
  const unsaid = rows.reduce((sum, row) => (row.lot === null ? add(sum, foundBeyond(row)) : sum), ZERO);
  const left = subtract(all, unsaid);
  return compare(left, ZERO) > 0 ? left : ZERO;
};

const shelfIn = ({ world: { shop, stock, cars } }: Shop): ReturnType<typeof shelfOf> =>
  shelfOf(shop, stock, CATALOGUE, '2026-03-02', boxedOn(Object.values(cars)));

const hold = (shop: Shop): void => {
  const cars = Object.values(shop.world.cars);
  for (const { id, kits } of cars)
    for (const { lines } of Object.values(kits)) {
      for (const { quantity } of lines) expect(Number(quantity)).toBeGreaterThan(0);
      for (const item of ['nut', 'washer'])
        expect(compare(sumOf(lines, item), most(shop.heard, id, item))).toBeLessThanOrEqual(0);
    }
  const shelf = shelfIn(shop);
  for (const item of ['nut', 'washer']) {
    const there = shelf.filter(({ supply }) => supply.item === item);
    const sum = there.reduce((total, { supply }) => add(total, supply.quantity), ZERO);
    expect(toDecimalText(sum)).toBe(toDecimalText(held(shop.world.stock, item)));
    for (const { supply } of there) expect(compare(supply.quantity, ZERO)).toBe(1);
  }
};

/** What the rules refuse does not happen. */
const tries = (shop: Shop, person: string, each: Told): void => {
  try {
    shop.does(person, each);
  } catch (error) {
    if (!(error instanceof Error) || !error.message.includes(' was refused ')) throw error;
  }
};

test('no box below nothing nor above what was picked; boxes and shelf together are what the stock has', () => {
  fc.assert(
    fc.property(story, (lines) => {
      const shop = shopWith(DOCUMENT);
      shop.startCar('C2', DOCUMENT);
      for (const lot of ['L-1', 'L-2'])
        shop.does('leo', { type: 'receive-lot', lot, item: 'nut', quantity: 9 });
      shop.does('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '12' }] });
      for (const [person, car] of [
        ['tom', 'C1'],
        ['tess', 'C2'],
      ] as const)
        shop.does(person, { type: 'start-operation', operation: 'AX-010', car });
      for (const each of lines) {
        const wasHeard = shop.heard.length;
        tries(shop, 'car' in each && each.car === 'C2' ? 'tess' : 'tom', each);
        hold(shop);
        const isTaken = shop.heard.length > wasHeard;
        if (isTaken && each.type === 'pick-kit')
          for (const item of each.emptied ?? []) expect(openOf(shelfIn(shop), item)).toEqual([]);
      }
    }),
    { numRuns: 80 },
  );
});
