/** A week's order of many items, three suppliers and up to two lines an item, from a seed. Invented. */
import type { Offer, OrderLine, OrderProblem } from '@/lib/domain/shop/order';

/** A Wednesday. */
const TODAY = 20_782;
const SUPPLIERS: OrderProblem['suppliers'] = [
  {
    key: 'H',
    orderDays: [3],
    takesToday: false,
    lead: 2,
    minimumValue: 1200,
    freight: {
      by: 'value',
      steps: [
        { from: 0, fee: 650 },
        { from: 9000, fee: 0 },
      ],
    },
  },
  {
    key: 'B',
    orderDays: [3],
    takesToday: false,
    lead: 4,
    minimumValue: 1200,
    freight: {
      by: 'value',
      steps: [
        { from: 0, fee: 980 },
        { from: 18_000, fee: 0 },
      ],
    },
  },
  {
    key: 'M',
    orderDays: [1, 2, 3, 4, 5],
    takesToday: true,
    lead: 1,
    minimumValue: 1200,
    freight: {
      by: 'weight',
      steps: [
        { from: 0, fee: 420 },
        { from: 2000, fee: 800 },
        { from: 20_000, fee: 2400 },
      ],
    },
  },
];
const SIZES = [1, 10, 25, 50, 100];

export const bigOrder = (items: number, seed: number): OrderProblem => {
  let state = seed * 7919;
  const chance = (): number => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
  const between = (least: number, most: number): number => least + Math.floor(chance() * (most - least + 1));
  const offers: Offer[] = [];
  const lines: OrderLine[] = [];
  for (let item = 0; item < items; item += 1) {
    const each = between(5, 300);
    for (const { key: supplier } of SUPPLIERS) {
      const drawn = SIZES.filter(() => chance() < 0.4);
      for (const packSize of drawn.length > 0 ? drawn : [10]) {
        const price = Math.ceil(each * packSize * (0.75 + chance() / 2) * (1 - 0.05 * Math.log(packSize)));
        offers.push({
          key: `${supplier}-${String(item)}-${String(packSize)}`,
          supplier,
          item: String(item),
          packSize,
          steps: [
            { fromPacks: chance() < 0.1 ? 2 : 1, price },
            ...(chance() < 0.3 ? [{ fromPacks: 5, price: Math.ceil(price * 0.9) }] : []),
          ],
          weight: packSize * between(2, 60),
        });
      }
    }
    for (let line = between(1, 2); line > 0; line -= 1)
      lines.push({
        key: `${String(item)}-${String(line)}`,
        item: String(item),
        quantity: between(1, 60),
        needBy: TODAY + between(0, 9),
        cars: [String(between(1, 6))],
        substitutes: chance() < 0.05 && item > 0 ? [String(item - 1)] : [],
      });
  }
  return { today: TODAY, lines, offers, suppliers: SUPPLIERS, pins: [] };
};
