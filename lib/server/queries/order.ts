/** Reads the week's order: what must be bought now, from whom, in which packs, for which car, and whether it could be cheaper. */
import 'server-only';
import { ZERO, add, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key } from '@/lib/domain/base/vocabulary';
import type { DemandLine } from '@/lib/domain/shop/demand';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import { RECKONED, quantityText, reasonPieces, reasonsOf } from '@/lib/domain/shop/need-words';
import { weekOf } from '@/lib/domain/shop/week';
import type { Week, WeekGroup } from '@/lib/domain/shop/week';
import { weekSheets } from '@/lib/domain/shop/week-answer';
import type { Packs, SheetLine, WeekSheet } from '@/lib/domain/shop/week-answer';
import { substituteCondition } from '@/lib/domain/shop/week-substitutes';
import type { OrderScore } from '@/lib/domain/shop/order-score';
import type { Database } from '@/lib/server/database';
import { needNow } from '@/lib/server/load/need';
import type { NeedNow } from '@/lib/server/load/need';
import { moneyText } from '@/lib/wire/money';
import type { HardwareCar } from '@/lib/wire/views/hardware';
import type {
  LateView,
  LaterView,
  OrderLineView,
  OrderSheetView,
  OrderView,
  PacksView,
  SolvedOrder,
} from '@/lib/wire/views/order';
import { dayWords, weekdayWords, withTimes } from '@/lib/wire/views/when';
import { counted } from './board/words';
import { pinViews, sellersOf } from './order/pins';
import { approvalOf, sentOrders } from './order/sent';
import { solved } from './order/solved';
import type { Solved } from './order/solved';

/** From arrival to the bench: unpacked, looked at, put away. Common practice, no source. */
const BUFFER_DAYS = 1;

export type Shown = Omit<NeedNow, 'cars'>;

export const orderView = async (db: Database, now: string): Promise<OrderView> => {
  const shown = await needNow(db, now);
  const { shop } = shown.world;
  const week = weekOf({
    demand: shown.demand,
    catalogue: shown.catalogue,
    supply: shop,
    planOf: (car) => shown.plans[shown.world.cars[car]?.plan ?? ''] ?? null,
    today: shown.today,
    shut: USUAL_WEEK.days.shut,
    buffer: BUFFER_DAYS,
  });
  const isAnything = week.problem.lines.length > 0;
  const answered = isAnything ? await solved(week.problem) : null;
  const order = answered === null ? null : solvedOrder(week, answered, shown);
  return {
    says: saysOf(order, shown.floor.length, isAnything),
    order,
    hasSuppliers: Object.keys(shop.suppliers).length > 0,
    unoffered: week.unoffered.map((line) => ({
      item: line.item,
      name: nameOf(line.item, shown),
      quantity: quantityText(line.buy, line.unit),
      by: line.by === null ? null : shown.names.day(line.by),
      cars: tags(
        line.short.map(({ car }) => car),
        shown,
      ),
    })),
    pins: pinViews(shown, answered?.costs ?? []),
    sent: sentOrders(shown),
    later: laterViews(week.later, shown),
    basis: RECKONED,
  };
};

export const nameOf = (key: Key, { names }: Pick<Shown, 'names'>): string => names.item(key) ?? key;

const saysOf = (order: SolvedOrder | null, cars: number, isAnything: boolean): string => {
  if (!isAnything) return 'Nothing must be ordered this week.';
  if (order === null) return 'No order was found in the time there was.';
  const lines = order.sheets.reduce((sum, sheet) => sum + sheet.lines.length, 0);
  return `One order for ${counted(cars, 'car').toLowerCase()}: ${String(lines)} lines, ${counted(order.sheets.length, 'supplier').toLowerCase()}.`;
};

const tags = (cars: readonly CarId[], { world }: Shown): readonly HardwareCar[] =>
  [...new Set(cars)].flatMap((id) => {
    const car = world.cars[id];
    return car === undefined ? [] : [{ id, chassis: car.chassis, colour: car.colour }];
  });

const solvedOrder = (week: Week, { solution }: Solved, shown: Shown): SolvedOrder | null => {
  const { answer, score, bound, gap, proved, seconds } = solution;
  if (answer === null || score === null) return null;
  const sheets = weekSheets(week, answer);
  return {
    total: moneyText(score.money),
    goods: moneyText(score.goods),
    freight: score.freight === 0 ? 'free' : moneyText(score.freight),
    sheets: sheets.map((sheet) => sheetView(sheet, shown)),
    proof: {
      isProved: proved,
      cost: moneyText(score.money),
      bound: moneyText(bound.money),
      gap: moneyText(gap ?? 0),
      lateCarDays: score.lateCarDays,
      fewestLate: bound.lateCarDays,
      offers: week.problem.offers.length,
      lines: week.problem.lines.length,
      seconds: seconds < 10 ? seconds.toFixed(1) : seconds.toFixed(0),
    },
    late: lateViews(sheets, score, shown),
    approval: approvalOf(sheets, shown),
  };
};

const lateViews = (sheets: readonly WeekSheet[], { late }: OrderScore, shown: Shown): readonly LateView[] => {
  const cars = new Set(late.map(({ car }) => car));
  return sheets
    .flatMap((sheet) => sheet.lines.filter(({ late: days }) => days > 0).map((line) => ({ sheet, line })))
    .sort((a, b) => b.line.late - a.line.late)
    .map(({ sheet, line }) => ({
      item: nameOf(line.item, shown),
      says: `needed ${line.by === null ? '' : dayText(line.by, shown)}, comes ${weekdayWords(sheet.arrives, shown.today)}: ${counted(line.late, 'day').toLowerCase()} late`,
      cars: tags(
        line.cars.map(({ car }) => car).filter((car) => cars.has(car)),
        shown,
      ),
    }));
};

/** What must be ordered first stands first; the shelf, which waits for no day, last. */
const laterViews = (later: Week['later'], shown: Shown): readonly LaterView[] =>
  later
    .toSorted((a, b) => orderedBefore(a) - orderedBefore(b))
    .map(({ line, item, by, orderBy, quantity, cars }) => ({
      key: line,
      item: nameOf(item, shown),
      quantity: quantityText(quantity, shown.catalogue[item]?.unit ?? 'pc'),
      says: [
        ...(by === null
          ? ['for the shelf, once what lies there is taken']
          : [`needed ${dayText(by, shown)}`]),
        ...(orderBy === null ? [] : [orderByText(orderBy, shown)]),
      ].join(', '),
      cars: tags(
        cars.map(({ car }) => car),
        shown,
      ),
    }));

const orderedBefore = ({ orderBy }: WeekGroup): number => (orderBy === null ? Infinity : Date.parse(orderBy));

const orderByText = (day: Day, { today }: Shown): string =>
  `order ${day === today ? 'today' : `by ${weekdayWords(day, today)}`}`;

const dayText = (day: Day, { today }: Shown): string =>
  day === today ? 'today' : `by ${dayWords(day, today)}`;

const sheetView = (sheet: WeekSheet, shown: Shown): OrderSheetView => {
  const { shipment, supplier, ordered, arrives, goods, freight, lines } = sheet;
  const { today, world } = shown;
  return {
    key: shipment,
    name: world.shop.suppliers[supplier]?.name ?? supplier,
    ordered: ordered === today ? 'today' : weekdayWords(ordered, today),
    arrives: weekdayWords(arrives, today),
    goods: moneyText(goods),
    freight: freight === 0 ? 'freight free' : `freight ${moneyText(freight)}`,
    total: moneyText(goods + freight),
    deposits: depositWords(sheet, world.shop.offers),
    lines: lines
      .map((line) => ({ line, name: nameOf(line.item, shown) }))
      .sort((a, b) => a.name.localeCompare(b.name, 'en'))
      .map(({ line }) => lineView(line, supplier, shown)),
  };
};

const depositWords = ({ lines }: WeekSheet, offers: Shown['world']['shop']['offers']): string => {
  const paid = lines
    .flatMap(({ packs }) => packs)
    .reduce((sum, { offer, packs }) => sum + packs * (offers[offer]?.deposit ?? 0), 0);
  return paid === 0 ? '' : `and ${moneyText(paid)} deposit, back for the old parts`;
};

const lineView = (line: SheetLine, supplier: string, shown: Shown): OrderLineView => {
  const { item, insteadOf, by, orderBy, late, cars, shelf, spare, packs, others, cost } = line;
  const { catalogue, world, names, today } = shown;
  const unit = catalogue[item]?.unit ?? 'pc';
  const asked = [item, ...insteadOf].flatMap((key) => shown.demand.find((each) => each.item === key) ?? []);
  const text = (quantity: Exact): string => quantityText(quantity, unit);
  const need = cars.reduce((sum, { quantity }) => add(sum, quantity), shelf);
  const isOther = (each: Packs): boolean => each.supplier !== supplier;
  const packsView = (each: Packs): PacksView => ({
    says: `${String(each.packs)} × ${text(each.packSize)}`,
    cost: moneyText(each.cost),
    supplier: isOther(each) ? (world.shop.suppliers[each.supplier]?.name ?? each.supplier) : null,
  });
  return {
    item,
    name: nameOf(item, shown),
    unit,
    instead: insteadWords(line, shown),
    why: whyWords(asked, compare(shelf, ZERO) > 0, shown),
    reasons: asked.flatMap((each) => reasonsOf(each, names)).map(withTimes(shown.zone, today)),
    need: text(need),
    by: by === null ? null : dayText(by, shown),
    orderBy: orderBy === null ? null : orderByText(orderBy, shown),
    isLate: late > 0,
    packs: packs.map(packsView),
    others: others.map(packsView),
    cars: cars.flatMap(({ car, quantity }) =>
      tags([car], shown).map((tag) => ({ car: tag, quantity: text(quantity) })),
    ),
    shelf: compare(shelf, ZERO) > 0 ? text(shelf) : null,
    spare: compare(spare, ZERO) === 0 ? '0' : text(spare),
    cost: moneyText(cost),
    pin: world.shop.pins[item]?.pin ?? null,
    sellers: sellersOf(item, world.shop),
  };
};

const insteadWords = ({ item, insteadOf }: SheetLine, shown: Shown): string | null => {
  const [asked] = insteadOf;
  if (asked === undefined) return null;
  const condition = substituteCondition(asked, item, Object.values(shown.plans));
  return `also for ${nameOf(asked, shown)}${condition === null ? '' : `: ${condition}`}`;
};

const MOST_CAUSES = 2;

/** The first causes, each once; all of them stand behind it. */
const whyWords = (asked: readonly DemandLine[], isShelf: boolean, { names, zone, today }: Shown): string => {
  const pieces = asked.flatMap((line) => reasonPieces(line, names));
  const causes = [...new Set(pieces.map(({ cause }) => cause))];
  const said = [
    ...causes.slice(0, MOST_CAUSES),
    ...(causes.length > MOST_CAUSES ? [`${String(causes.length - MOST_CAUSES)} more reasons`] : []),
    ...(isShelf ? ['up to the shelf’s minimum'] : []),
  ];
  return withTimes(zone, today)(said.join('; '));
};
