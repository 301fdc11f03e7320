/** Reads approved orders: what was sent, what came, what is to come. */
import 'server-only';
import { ONE, ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { Catalogue } from '@/lib/domain/shop/item';
import { quantityText } from '@/lib/domain/shop/need-words';
import { depositsOf, isOpen, nextLotNumber, orderedOf, outstandingOf } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseLine, PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { binOf } from '@/lib/domain/shop/rows';
import type { Shop } from '@/lib/domain/shop/rows';
import { END_WORDS } from '@/lib/domain/shop/stock-words';
import type { Database } from '@/lib/server/database';
import { loadEveryCar } from '@/lib/server/load/car';
import { catalogueFor } from '@/lib/server/load/catalogue';
import { loadReleased } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { unitWords } from '@/lib/server/queries/hardware';
import { amount } from '@/lib/domain/base/money';
import { moneyText } from '@/lib/wire/money';
import { shopDay } from '@/lib/wire/shop-day';
import { nameOfPerson, namesOf } from '@/lib/wire/views/names';
import type {
  PurchaseLineView,
  PurchaseSummary,
  PurchaseView,
  PurchasesView,
} from '@/lib/wire/views/purchase';
import { weekdayWords, whenWords } from '@/lib/wire/views/when';

interface Books {
  readonly shop: Shop;
  readonly catalogue: Catalogue;
  readonly cars: readonly Car[];
  readonly nameOf: (key: string) => string;
  readonly today: Day;
  readonly day: (day: Day) => string;
  readonly when: (at: string) => string;
}

const readBooks = async (db: Database, now: string): Promise<Books> => {
  const [shop, { zone }, released, cars] = await Promise.all([
    loadShop(db),
    shopSetting(db),
    loadReleased(db),
    loadEveryCar(db),
  ]);
  const plans = Object.values(released);
  const catalogue = catalogueFor(plans, shop.items);
  const today = shopDay(zone)(now);
  return {
    shop,
    catalogue,
    cars,
    nameOf: (key) =>
      catalogue[key]?.name ?? plans.map((plan) => namesOf(plan)(key)).find((name) => name !== null) ?? key,
    today,
    day: (day) => weekdayWords(day, today),
    when: whenWords(zone, today),
  };
};

/** Open ones first, the soonest first; then the latest. */
export const purchasesView = async (db: Database, now: string): Promise<PurchasesView> => {
  const books = await readBooks(db, now);
  const orders = Object.values(books.shop.orders);
  const open = orders.filter(isOpen).toSorted((a, b) => a.due.localeCompare(b.due));
  const rest = orders.filter((order) => !isOpen(order)).toSorted((a, b) => Number(b.id) - Number(a.id));
  return {
    says:
      orders.length === 0
        ? 'Nothing was ordered yet.'
        : open.length === 0
          ? 'Nothing is on its way.'
          : `${String(open.length)} of ${String(orders.length)} orders ${open.length === 1 ? 'is on its way' : 'are on their way'}.`,
    orders: [...open, ...rest].map((order) => summaryOf(order, books)),
  };
};

/** Null where there is no such order. */
export const purchaseView = async (db: Database, id: string, now: string): Promise<PurchaseView | null> => {
  const books = await readBooks(db, now);
  const { shop, day, when } = books;
  const order = shop.orders[id];
  if (order === undefined) return null;
  const person = (by: string, at: string): string => nameOfPerson(shop.people, by, at);
  return {
    ...summaryOf(order, books),
    ordered: day(order.ordered),
    due: day(order.due),
    dueDay: order.due,
    goods: moneyText(order.goods),
    freight: order.freight === 0 ? 'no freight' : `${moneyText(order.freight)} freight`,
    approvedBy: `${person(order.approvedBy, order.approvedAt)}, ${when(order.approvedAt)}`,
    deliveries: order.deliveries.map(
      ({ note, at, by }) => `${when(at)}, ${person(by, at)}${note === null ? '' : `, delivery note ${note}`}`,
    ),
    ...depositsView(order),
    credits: order.credits.map(
      ({ money, why, at, by, isDeposit }) =>
        `${moneyText(money)}${isDeposit === true ? ' of deposit' : ''}: ${why}; ${person(by, at)}, ${when(at)}`,
    ),
    lines: order.lines.map((line) => lineView(line, books)),
    text: textOf(order, books),
    mail: shop.suppliers[order.supplier]?.mail ?? null,
    nextLot: nextLotNumber(shop.lots),
  };
};

const depositsView = (order: PurchaseOrder): Pick<PurchaseView, 'deposits' | 'depositsOpen'> => {
  const { paid, open } = depositsOf(order);
  if (paid === 0) return { deposits: '', depositsOpen: '' };
  const left = open === 0 ? 'all of it is back' : `${moneyText(open)} to come back for the old parts`;
  return {
    deposits: `${moneyText(paid)} deposit beside it, ${left}`,
    depositsOpen: open === 0 ? '' : amount(open),
  };
};

const summaryOf = (order: PurchaseOrder, { shop, today, day }: Books): PurchaseSummary => {
  const left = order.lines.filter((line) => compare(outstandingOf(line), ZERO) > 0).length;
  const open = left > 0;
  const isLate = open && order.due < today;
  return {
    id: order.id,
    supplier: shop.suppliers[order.supplier]?.name ?? order.supplier,
    says: `${order.ordered > today ? 'to be ordered' : 'ordered'} ${day(order.ordered)}, ${open ? (isLate ? 'was to come' : 'comes') : 'was due'} ${day(order.due)}`,
    stand: open
      ? `${String(left)} of ${String(order.lines.length)} ${order.lines.length === 1 ? 'line is' : 'lines are'} to come`
      : 'nothing more is to come',
    isOpen: open,
    isLate,
    total: moneyText(order.goods + order.freight),
  };
};

const lineView = (line: PurchaseLine, { shop, catalogue, cars, nameOf }: Books): PurchaseLineView => {
  const { item, packs, packSize, price, good, damaged, wrong, ended } = line;
  const known = catalogue[item];
  const unit = known?.unit ?? 'pc';
  const text = (quantity: string): string => quantityText(parseDecimal(quantity) ?? ZERO, unit);
  const left = outstandingOf(line);
  const lots = Object.values(shop.lots).filter((lot) => lot.item === item);
  return {
    item,
    name: nameOf(item),
    unit: unitWords(unit),
    number: line.number,
    bin: binOf(shop, item, null),
    packs: `${String(packs)} × ${text(packSize)}`,
    price: moneyText(price),
    total: moneyText(price * packs),
    ordered: quantityText(orderedOf(line), unit),
    came: text(good),
    left: quantityText(left, unit),
    isWhole: compare(left, ZERO) === 0,
    amiss: [
      ...(damaged === '0' ? [] : [`${text(damaged)} damaged`]),
      ...(wrong === '0' ? [] : [`${text(wrong)} wrong`]),
      ...(ended === null ? [] : [`ended: ${END_WORDS[ended.why]}`]),
    ],
    lots: line.lots,
    isTraced: known?.trace === 'lot',
    asksCertificate: lots.at(-1)?.certificateAsked ?? false,
    goesOff: known?.shelf !== undefined && known.shelf !== null,
    cars: line.cars.flatMap(({ car: id, quantity }) => {
      const car = cars.find((each) => each.id === id);
      return car === undefined
        ? []
        : [{ chassis: car.chassis, colour: car.colour, quantity: text(quantity) }];
    }),
  };
};

/** As a letter has it: what the supplier calls each, packs, what was agreed. */
const textOf = (order: PurchaseOrder, books: Books): string =>
  [
    `Order ${order.id}, ${books.day(order.ordered)}`,
    '',
    ...order.lines.map(({ item, packs, packSize, price, number }) => {
      const size = quantityText(parseDecimal(packSize) ?? ONE, books.catalogue[item]?.unit ?? 'pc');
      const theirs = number === null ? '' : `, your number ${number}`;
      return `${String(packs)} × ${size} ${books.nameOf(item)}${theirs}, ${moneyText(price)} a pack`;
    }),
    '',
    `Goods ${moneyText(order.goods)}, freight ${moneyText(order.freight)}, together ${moneyText(order.goods + order.freight)}.`,
    `Wanted by ${books.day(order.due)}.`,
  ].join('\n');

/** The lines as a file: item, the supplier's number, packs, pieces in a pack, price of a pack, for the whole line. */
export const purchaseRows = async (
  db: Database,
  id: string,
): Promise<readonly (readonly string[])[] | null> => {
  const shop = await loadShop(db);
  const order = shop.orders[id];
  if (order === undefined) return null;
  return [
    ['item', 'number', 'packs', 'pack', 'price', 'total'],
    ...order.lines.map(({ item, number, packs, packSize, price }) => [
      item,
      number ?? '',
      String(packs),
      packSize,
      amount(price),
      amount(price * packs),
    ]),
  ];
};
