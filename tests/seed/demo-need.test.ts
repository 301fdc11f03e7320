/** What the six demo cars need, as a mechanic would read it. */
import { describe, expect, test } from 'vitest';
import { ZERO, add, compare, exact, toDecimalText } from '@/lib/domain/base/exact';
import { shopNeed } from '@/lib/domain/shop-need';
import type { DemandLine } from '@/lib/domain/shop/demand';
import { shopCatalogue } from '@/lib/domain/shop/catalogue';
import { catalogueOf } from '@/lib/domain/shop/item';
import { coveredWords, quantityText, reasonsOf } from '@/lib/domain/shop/need-words';
import type { NeedNames } from '@/lib/domain/shop/need-words';
import { sizeProblemSentence } from '@/lib/domain/shop/size-problem';
import { readSize } from '@/lib/domain/shop/size';
import { weekOf } from '@/lib/domain/shop/week';
import { weekSheets } from '@/lib/domain/shop/week-answer';
import { solveOrder } from '@/lib/solve/order/solve';
import type { PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { namesOf } from '@/lib/wire/views/names';
import { demoOn } from '@/tests/support/demo';

const TODAY = '2026-11-25';
const { world, stage } = demoOn(TODAY);
const catalogue = catalogueOf(Object.values(stage.plans), {
  'W-M8': { minimum: exact(100), attrition: exact(1, 20) },
  'WC-re': { isPart: 'P-28' },
});
const at = { today: TODAY, minutesADay: 420, days: { shut: [6, 7], closed: [] } };
const { cars, demand } = shopNeed(world, stage.plans, catalogue, at);

const names: NeedNames = {
  thing: (car, key) => {
    const document = stage.plans[world.cars[car]?.plan ?? ''];
    return document === undefined ? null : namesOf(document)(key);
  },
  item: (key) => catalogue[key]?.name ?? null,
  car: (id) => world.cars[id]?.chassis ?? id,
  person: (id) => world.shop.people[id]?.name ?? null,
  day: (day) => day,
  dayOf: stage.dayOf,
};

const line = (item: string): DemandLine => {
  const found = demand.find((each) => each.item === item);
  if (found === undefined) throw new Error(`no ${item}`);
  return found;
};
const reasons = (item: string, car: string): readonly string[] =>
  reasonsOf(line(item), names).filter((reason) => reason.includes(car));

test('six cars, each with a need of its own; nothing is needed of what no plan has', () => {
  expect(cars.map(({ car }) => car.id)).toEqual(expect.arrayContaining(['C54-011', 'C54-015', 'LGT-001']));
  expect(cars).toHaveLength(6);
  expect(demand.length).toBeGreaterThan(100);
});

describe('C54-014, whose tube nuts are of a soft lot', () => {
  test('six are renewed, and six tenths of its brake line is made again (D57)', () => {
    expect(reasons('TN-M10', 'C54-014')[0]).toBe(
      '6 for C54-014, Brake tube nuts on frame and axle (J-310@5 to 10), to be renewed: lot L-0941: Brindle Tube & Line called: threads of this lot are soft. None of it goes on a car, now',
    );
    expect(reasons('BL-475', 'C54-014')).toEqual([
      '3.846 m for C54-014, Make and hang brake lines (LN-010), done again, 3/5 of it, since tube nut M10×1 for 4.75 mm of Brake tube nuts on frame and axle (J-310@5 to 10) is renewed, now',
    ]);
  });

  test('no nut comes from that lot', () => {
    expect(coveredWords(line('TN-M10').allocations, 'pc', names)).toEqual(['24 from lot L-0853']);
  });
});

test('lock nuts for the caster are counted before anybody opens the joint', () => {
  expect(reasons('NL-M12', 'C54-012')).toEqual([
    '4 for C54-012, Upper arm shaft to tower, camber shims (J-203@L R), opened again in Caster and camber (WH-090), as planned, by 2026-11-25',
  ]);
});

test('a starter that was robbed is owed by the car it was taken from', () => {
  expect(reasonsOf(line('P-11'), names)).toEqual([
    expect.stringMatching(/^1 for C54-015, .*, taken for C54-013, by 2026-12-/u),
  ]);
});

test('joints that a wrench makes doubtful lose their lock nuts when they are renewed', () => {
  expect(reasons('NL-M10', 'C54-011').length).toBeGreaterThan(0);
  for (const reason of reasons('NL-M10', 'C54-011')) expect(reason).toContain('to be renewed: tool T-14');
});

test('what is short is bought, no more: carburettor gaskets, two left of three', () => {
  const { need, buy, by, unit, allocations } = line('GK-carb');
  expect([need, buy].map((each) => quantityText(each, unit))).toEqual(['3', '1']);
  expect(coveredWords(allocations, unit, names)).toEqual(['2 from lot L-0861']);
  // The first two cars have them: the day of the third counts.
  expect(by).toBe(line('GK-carb').short[0]?.by);
});

test('bulk is counted by bin: washers left over from the first cars cover the next', () => {
  expect(coveredWords(line('W-M8').allocations, 'pc', names)).toEqual(['84 from the shelf']);
});

test('washers: what gets lost, and never fewer than a hundred', () => {
  const { need, minimum, demand: wanted, buy } = line('W-M8');
  expect(toDecimalText(need)).toBe('140.7');
  expect([toDecimalText(minimum), toDecimalText(wanted), toDecimalText(buy)]).toEqual([
    '100',
    '156.7',
    '157',
  ]);
});

test('a part that the plan takes as an item is not bought twice', () => {
  expect(demand.map(({ item }) => item)).not.toContain('P-28');
  expect(toDecimalText(line('WC-re').need)).toBe('2');
});

test('bolts, nuts, washers and pins are named so that their sizes can be read', () => {
  const sized = Object.values(catalogue).filter(({ name }) =>
    /^(?:bolt|screw|nut|insert|all-metal|castle|thin|high|tube nut|washer|penny|hardened|toothed|spring washer|copper|split)/u.test(
      name,
    ),
  );
  expect(sized.length).toBeGreaterThan(70);
  const unread = sized.flatMap(({ name }) => {
    const read = readSize(name);
    return read.ok ? [] : read.error.map((each) => `${name}: ${sizeProblemSentence(each)}`);
  });
  expect(unread).toEqual([]);
});

describe('the order of this week', () => {
  const terms = shopCatalogue(Object.values(stage.plans), world.shop.items);
  const asked = {
    demand: shopNeed(world, stage.plans, terms, at).demand,
    catalogue: terms,
    supply: world.shop,
    planOf: (car: string) => stage.plans[world.cars[car]?.plan ?? ''] ?? null,
    today: TODAY,
    shut: [6, 7],
    buffer: 1,
  };
  const week = weekOf(asked);

  test('three suppliers, most of what is short, and no cheaper one exists', async () => {
    const { answer, proved } = await solveOrder(week.problem, 20);
    const sheets = answer === null ? [] : weekSheets(week, answer);
    expect([proved, sheets.length]).toEqual([true, 3]);
    for (const { item, quantity } of week.groups) {
      const own = week.groups.filter((group) => group.item === item);
      const lines = sheets.flatMap((sheet) => sheet.lines.filter((line) => line.item === item));
      if (lines.length === 0 || lines.some(({ insteadOf }) => insteadOf.length > 0)) continue;
      const asked = own.reduce((sum, group) => add(sum, group.quantity), ZERO);
      const given = lines.flatMap(({ cars: of, shelf }) => [shelf, ...of.map((each) => each.quantity)]);
      expect([item, toDecimalText(given.reduce(add, ZERO))]).toEqual([item, toDecimalText(asked)]);
      expect(compare(quantity, ZERO)).toBe(1);
    }
  });

  test('once it is on its way, nothing more must be ordered', async () => {
    const { answer } = await solveOrder(week.problem, 20);
    const orders = (answer === null ? [] : weekSheets(week, answer)).map(
      ({ supplier, ordered, arrives, goods, freight, lines }, index): PurchaseOrder => ({
        id: String(Object.keys(world.shop.orders).length + 1 + index),
        supplier,
        ordered,
        due: arrives,
        lines: lines.flatMap(({ item, packs }) =>
          packs.map(({ offer, packs: count, packSize, cost }) => ({
            offer,
            item,
            packs: count,
            packSize: toDecimalText(packSize),
            price: cost / count,
            number: null,
            cars: [],
            good: '0',
            damaged: '0',
            wrong: '0',
            lots: [],
            ended: null,
          })),
        ),
        goods,
        freight,
        approvedBy: 'ada',
        approvedAt: '2026-11-25T12:00:00.000Z',
        deliveries: [],
        credits: [],
      }),
    );
    const sent = Object.fromEntries(orders.map((order) => [order.id, order]));
    const shop = { ...world.shop, orders: { ...world.shop.orders, ...sent } };
    const { demand: after } = shopNeed({ ...world, shop }, stage.plans, terms, at);
    expect(weekOf({ ...asked, demand: after }).problem.lines).toEqual([]);
  });

  test('what nobody offers is told', () => {
    expect(week.unoffered.map(({ item }) => item)).toContain('P-52');
  });
});
