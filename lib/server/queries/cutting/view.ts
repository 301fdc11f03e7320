/** Reads what all cars on the floor still need cut, and what of it the reader has chosen. */
import 'server-only';
import type { Car } from '@/lib/domain/car/rows';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { carCuts, cutLists } from '@/lib/domain/shop/cut-list';
import type { CarCuts, CutList } from '@/lib/domain/shop/cut-list';
import { remnantsOf } from '@/lib/domain/shop/remnants';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadFloor } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { CutCar, CutCarChoice, CutItem, CutRack } from '@/lib/wire/views/cutting';
import { namesOf } from '@/lib/wire/views/names';
import { whenWords } from '@/lib/wire/views/when';
import { named } from '../board/words';
import type { ToDraw } from './drawing';
import { millimetres } from './lengths';

export interface CuttingView {
  readonly says: string;
  readonly cars: readonly CutCarChoice[];
  readonly items: readonly CutItem[];
  /** In the order of the items; null where nothing can be planned. */
  readonly toDraw: readonly (ToDraw | null)[];
  /** About cars: what waits for a choice, what is cut by hand. */
  readonly notes: readonly string[];
  /** For the sheet that leaves the screen. */
  readonly asOf: string;
}

interface Cutting {
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly cuts: CarCuts;
}

/** Of the cars named, those that have something to cut; all of them where none is named. */
export const cuttingView = async (
  db: Database,
  chosen: readonly string[],
  now: string,
): Promise<CuttingView> => {
  const [floor, setting, shop] = await Promise.all([loadFloor(db), shopSetting(db), loadShop(db)]);
  const when = whenWords(setting.zone, shopDay(setting.zone)(now));
  const plans = await loadPlans(
    db,
    floor.map((car) => car.plan),
  );
  const all = floor.flatMap((car): readonly Cutting[] => {
    const plan = planOf({ plans }, car);
    return plan === null ? [] : [{ car, plan, cuts: carCuts(plan, car) }];
  });
  const asking = all.filter(({ cuts }) => cuts.wanted.length > 0);
  const picked = asking.filter(({ car }) => chosen.includes(car.id));
  const inPlan = picked.length === 0 ? asking : picked;
  const { lists, withoutLengths } = cutLists(
    inPlan.map(({ plan }) => plan),
    inPlan.flatMap(({ cuts }) => cuts.wanted),
    remnantsOf(shop.remnants),
  );
  const nameOf = (item: string): string =>
    all.map(({ plan }) => namesOf(plan.document)(item)).find((name) => name !== null) ?? item;
  const cars = inPlan.map(({ car }) => tagOf(car));
  const rackOf = rackWords(shop, when);
  const items = lists.map((list) => itemOf(list, nameOf(list.item), cars, rackOf(list.item)));
  return {
    says: saysOf(floor.length, cars),
    cars: asking.map(({ car }) => ({ ...tagOf(car), isIn: inPlan.some((each) => each.car === car) })),
    items,
    toDraw: lists.map(({ problem, marked }) =>
      problem === null || problem.pieces.length === 0 ? null : { problem, marked, cars },
    ),
    notes: [
      ...withoutLengths.map(
        (item) =>
          `${nameOf(item)} (${item}) is to be cut, and no plan says from which lengths: add “cut” to the item.`,
      ),
      ...all.flatMap(carNotes),
    ],
    asOf: when(now),
  };
};

const tagOf = ({ id, chassis, colour }: Car): CutCar => ({ id, chassis, colour });

const saysOf = (floor: number, cars: readonly CutCar[]): string => {
  if (floor === 0) return 'No car stands on the floor.';
  if (cars.length === 0) return 'No work on the floor asks for a piece any more.';
  return `What work that is not finished still takes, for ${named(cars.map(({ chassis }) => chassis))}. Drawn to scale.`;
};

const carNotes = ({ car, plan, cuts: { undecided, byHand } }: Cutting): readonly string[] => {
  const nameOf = namesOf(plan.document);
  const work = (key: string): string => `${nameOf(key) ?? key} (${key})`;
  return [
    ...[...new Set(undecided.map(({ operation }) => operation))].map(
      (key) => `${car.chassis}: the pieces of ${work(key)} wait for a choice.`,
    ),
    ...byHand.map(
      (key) =>
        `${car.chassis}: ${work(key)} is due again for a part of what it made. Cut that after the piece that came out.`,
    ),
  ];
};

/** What lies in the rack of an item. */
const rackWords =
  ({ remnants, people }: Shop, when: (at: string) => string) =>
  (item: string): CutRack => {
    const row = remnants[item];
    const lengths = (remnantsOf(remnants)[item] ?? []).map(({ length }) => millimetres(length));
    const by = row === undefined ? '' : `, counted ${when(row.at)} by ${people[row.by]?.name ?? row.by}`;
    return {
      lengths: lengths.map((each) => each.replaceAll(',', '')).join(', '),
      says:
        row === undefined
          ? 'Nobody has counted the rests in the rack: this plan begins with new lengths.'
          : lengths.length === 0
            ? `No rests in the rack${by}.`
            : `${lengths.length === 1 ? 'One rest' : `${String(lengths.length)} rests`} in the rack: ${lengths.join(' · ')} mm${by}.`,
    };
  };

const itemOf = (
  { item, terms, marked, tooLong, problem }: CutList,
  name: string,
  cars: readonly CutCar[],
  rack: CutRack,
): CutItem => {
  const tags = new Map(cars.map((car) => [car.id, car]));
  const { kerf, ends, keep, lengths } = terms;
  return {
    key: item,
    name,
    terms: [
      `sold in ${named(lengths.map(millimetres))} mm`,
      `kerf ${millimetres(kerf)} mm`,
      ...(ends.num === 0n ? [] : [`${millimetres(ends)} mm off each end`]),
      keep === null ? 'no rest is kept' : `rests kept from ${millimetres(keep)} mm`,
    ].join(', '),
    marks: marked.map(({ mark, piece, length, count, operations, cars: shares }) => ({
      mark,
      part: piece,
      codes: operations,
      length: millimetres(length),
      count,
      cars: shares.flatMap(({ car, count: each }) => {
        const tag = tags.get(car);
        return tag === undefined ? [] : [{ car: tag, count: each }];
      }),
    })),
    notes: [
      ...tooLong.map(
        ({ mark, piece, length }) =>
          `${mark}, ${piece}, is in no drawing: no length is long enough for ${millimetres(length)} mm.`,
      ),
      ...(problem === null
        ? ['These lengths have no common measure fine enough: round them in the plan.']
        : []),
    ],
    rack,
  };
};
