/** The figures of a car's cost in words. Pure, so that tests can look too. */
import { ZERO, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Day, Key } from '@/lib/domain/base/vocabulary';
import { withPlace } from '@/lib/domain/base/words';
import type { Car } from '@/lib/domain/car/rows';
import type { CostOfCar } from '@/lib/domain/cost-of-car';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { COST_KINDS } from '@/lib/domain/shop/car-cost';
import type { CostKind, Figures, ScrapLine, ScrapReason, StageCost } from '@/lib/domain/shop/car-cost';
import type { Catalogue } from '@/lib/domain/shop/item';
import { quantityText } from '@/lib/domain/shop/need-words';
import type { HourRates } from '@/lib/domain/shop/rates';
import type { PriceBasis } from '@/lib/domain/shop/unit-price';
import { moneyText } from '@/lib/wire/money';
import type {
  CostCell,
  CostRow,
  CostView,
  MaterialView,
  ScrapView,
  UnpricedView,
} from '@/lib/wire/views/cost';
import { durationWords } from '@/lib/wire/views/duration';
import { namesOf } from '@/lib/wire/views/names';
import { dayWords } from '@/lib/wire/views/when';

interface Shown {
  readonly cost: CostOfCar;
  readonly plan: CompiledPlan;
  readonly car: Car;
  readonly catalogue: Catalogue;
  readonly rates: HourRates;
  readonly today: Day;
}

const BASIS_WORDS: Readonly<Record<PriceBasis, string>> = {
  lot: 'what its lot cost',
  paid: 'the price last paid',
  offer: 'the cheapest offer',
};

const SCRAP_WORDS: Readonly<Record<ScrapReason, string>> = {
  renewed: 'in once more, for what was renewed',
  again: 'used up once more, for work done again',
  damaged: 'damaged, found in the kit',
  'extra-taken': 'taken over and above the kit',
  scrapped: 'scrapped',
  lost: 'lost',
};

const RECKONED =
  'Material counts at what its lot cost, else at the price last paid for it, else at the cheapest offer; freight by value, hours at the rate of their day, what is planned at today’s prices; each sum is rounded once and its lines add up to it.';

/** As many as are read at a glance; the rest is folded, with its sum. */
const MOST_LINES = 12;

export const costViewOf = (shown: Shown): CostView => {
  const { cost, plan, car, rates, today } = shown;
  const { soFar, planned, scrap, total } = cost;
  const stage = plan.stages[car.stage]?.name ?? '';
  const rest = cost.materials.slice(MOST_LINES);
  return {
    id: car.id,
    chassis: car.chassis,
    colour: car.colour,
    says: `${plan.document.plan} ${plan.document.revision}, ${car.delivered ? 'delivered' : `stands in ${stage}`}.`,
    total: moneyText(total),
    planned: moneyText(planned.total),
    scrapSays: scrap === 0 ? null : `${moneyText(scrap)} of it is scrap`,
    share: planned.total === 0 ? 0 : Math.min(1, total / planned.total),
    stages: cost.stages.map((each) => rowOf(each, shown)),
    sum: {
      ...cells(soFar, planned, car.delivered),
      key: 'sum',
      number: null,
      name: 'All stages',
      time: timeOf(
        cost.stages.reduce((sum, { minutes }) => sum + minutes.soFar, 0),
        cost.stages.reduce((sum, { minutes }) => sum + minutes.planned, 0),
      ),
    },
    scrap: moneyText(scrap),
    materials: cost.materials.map(({ item, basis, quantity, money }): MaterialView => ({
      key: item,
      name: nameOf(item, shown),
      quantity: textOf(item, quantity, shown),
      basis: BASIS_WORDS[basis],
      money: moneyText(money),
    })),
    folded:
      rest.length === 0
        ? null
        : {
            from: MOST_LINES,
            says: `${counted(rest.length, 'more line')}, ${moneyText(rest.reduce((sum, { money }) => sum + money, 0))}`,
          },
    scrapped: cost.scrapped.map((line) => scrapView(line, shown)),
    unpriced: unpricedOf(shown),
    notes: notesOf(cost),
    basis: RECKONED,
    plan: plan.document.plan,
    sent: cost.sent.map(({ key, money }) => ({
      key,
      name: placeOf(key, shown),
      money: money === null ? null : moneyText(money),
    })),
    rates: Object.values(rates)
      .toSorted((a, b) => (a.id < b.id ? 1 : -1))
      .map(({ id, money }, _, all) => ({
        id,
        says: `${moneyText(money)} from ${dayWords(id, today)}`,
        isNow: id === all.find((each) => each.id <= today)?.id,
      })),
    today,
  };
};

const counted = (count: number, what: string): string => `${String(count)} ${what}${count === 1 ? '' : 's'}`;

const nameOf = (key: Key, { catalogue, plan }: Shown): string =>
  catalogue[key]?.name ?? namesOf(plan.document)(key) ?? key;

const textOf = (key: Key, quantity: Exact, { catalogue }: Shown): string => {
  const unit = catalogue[key]?.unit ?? 'pc';
  const text = quantityText(quantity, unit);
  return unit === 'pc' || text.endsWith(unit) ? text : `${text} ${unit}`;
};

const rowOf = ({ stage, soFar, planned, minutes }: StageCost, { plan, car }: Shown): CostRow => {
  const named = stage === null ? undefined : plan.stages[stage];
  return {
    ...cells(soFar, planned, car.delivered || (stage ?? 0) < car.stage),
    key: named?.key ?? 'none',
    number: stage === null ? null : stage + 1,
    name: named?.name ?? 'Of no stage',
    time: timeOf(minutes.soFar, minutes.planned),
  };
};

/** `isOver`: nothing more of it is to come. */
const cells = (soFar: Figures, planned: Figures, isOver: boolean) => {
  const difference = soFar.total - planned.total;
  const of = (kind: CostKind | 'total'): CostCell => ({
    soFar: figure(soFar[kind]),
    planned: figure(planned[kind]),
  });
  const [material, hours, outside, freight] = COST_KINDS.map(of);
  const none: CostCell = { soFar: NOTHING, planned: NOTHING };
  return {
    material: material ?? none,
    hours: hours ?? none,
    outside: outside ?? none,
    freight: freight ?? none,
    total: of('total'),
    difference: difference > 0 ? `+${moneyText(difference)}` : figure(difference),
    against: difference === 0 ? '' : difference > 0 ? 'over' : isOver ? 'under' : 'to come',
  };
};

const NOTHING = '·';
const figure = (money: number): string => (money === 0 ? NOTHING : moneyText(money));

const timeOf = (soFar: number, planned: number): string =>
  soFar + planned === 0 ? '' : `${durationWords(soFar)} of ${durationWords(planned)}`;

const scrapView = (line: ScrapLine, shown: Shown): ScrapView => {
  const { item, lot, quantity, scrap, money } = line;
  const at = line.for === null ? null : placeOf(line.for, shown);
  return {
    name: nameOf(item, shown),
    quantity: textOf(item, quantity, shown),
    says: [
      ...(scrap === null ? [] : [SCRAP_WORDS[scrap]]),
      ...(at === null ? [] : [at]),
      ...(lot === null ? [] : [`lot ${lot}`]),
    ].join('; '),
    money: money === null ? null : moneyText(money),
  };
};

const placeOf = (key: string, { plan }: Shown): string => {
  const name = namesOf(plan.document)(key);
  return name === null ? key : `${key} ${withPlace(key, name)}`;
};

const unpricedOf = (shown: Shown): readonly UnpricedView[] => {
  const { items, minutes, outside, plannedOutside } = shown.cost.unpriced;
  const both = (soFar: string | null, planned: string | null): string =>
    [
      ...(soFar === null ? [] : [`${soFar} so far`]),
      ...(planned === null ? [] : [`${planned} planned`]),
    ].join(', ');
  const some = (item: Key, quantity: Exact): string | null =>
    compare(quantity, ZERO) === 0 ? null : textOf(item, quantity, shown);
  const hours = (count: number): string | null => (count === 0 ? null : durationWords(count));
  return [
    ...(minutes.soFar + minutes.planned === 0
      ? []
      : [
          {
            name: 'Hours',
            says: `${both(hours(minutes.soFar), hours(minutes.planned))}; no rate was said for them`,
          },
        ]),
    ...items
      .map(({ item, soFar, planned }) => ({
        name: nameOf(item, shown),
        says: both(some(item, soFar), some(item, planned)),
      }))
      .toSorted((a, b) => a.name.localeCompare(b.name, 'en')),
    ...outside.map(({ part, work, trip }) => ({
      name: nameOf(part, shown),
      says: `${work}, trip ${trip}: not billed yet`,
    })),
    ...plannedOutside.map(({ key }) => ({
      name: placeOf(key, shown),
      says: 'goes to another firm: nobody has said what it will cost',
    })),
  ];
};

const notesOf = ({ unsaid, waiting }: CostOfCar): readonly string[] => [
  ...(unsaid === 0
    ? []
    : [
        `${counted(unsaid, 'sign-off')} of this car ${unsaid === 1 ? 'is' : 'are'} from before stock was kept and ${unsaid === 1 ? 'says' : 'say'} nothing of what went in.`,
      ]),
  ...(waiting === 0
    ? []
    : [
        `${counted(waiting, 'planned line')} ${waiting === 1 ? 'waits' : 'wait'} for a choice and ${waiting === 1 ? 'is' : 'are'} in no sum yet.`,
      ]),
];
