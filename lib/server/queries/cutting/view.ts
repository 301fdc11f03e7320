/** Reads what all cars on the floor still need cut, and what of it the reader has chosen. */
import 'server-only';
import type { Car } from '@/lib/domain/car/rows';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { carCuts, cutLists } from '@/lib/domain/shop/cut-list';
import type { CarCuts, CutList } from '@/lib/domain/shop/cut-list';
import { remnantsOf } from '@/lib/domain/shop/remnants';
import type { RemnantRow } from '@/lib/domain/shop/remnants';
import type { Shop } from '@/lib/domain/shop/rows';
import { sawnKeyOf, stillToSaw } from '@/lib/domain/shop/sawn';
import type { Database } from '@/lib/server/database';
import { loadFloor } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { CutCar, CutCarChoice, CutItem, CutRack, CutSawn } from '@/lib/wire/views/cutting';
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
  /** Of all cars. */
  readonly sawn: readonly CutSawn[];
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
  const asking = all.filter(({ cuts }) => stillToSaw(cuts.wanted, shop.sawn).length > 0);
  const picked = asking.filter(({ car }) => chosen.includes(car.id));
  const inPlan = picked.length === 0 ? asking : picked;
  const { lists, withoutLengths } = cutLists(
    inPlan.map(({ plan }) => plan),
    inPlan.flatMap(({ cuts }) => cuts.wanted),
    remnantsOf(shop.remnants),
    shop.sawn,
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
    sawn: all.flatMap((each) => sawnFor(each, shop, nameOf, when)),
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

/** What is sawn for a car and not built in, work that takes alike pieces put together. */
const sawnFor = (
  { car, cuts }: Cutting,
  { sawn, people }: Shop,
  nameOf: (item: string) => string,
  when: (at: string) => string,
): readonly CutSawn[] => {
  const found = new Map<string, CutSawn>();
  for (const wanted of cuts.wanted) {
    const row = sawn[sawnKeyOf(wanted)];
    if (row === undefined || row.count === 0) continue;
    const { item, piece, length, operation } = wanted;
    const key = [item, piece, row.length].join('|');
    const before = found.get(key);
    const count = (before?.count ?? 0) + Math.min(row.count, wanted.count);
    found.set(key, {
      key: `${car.id}|${key}`,
      name: nameOf(item),
      part: piece,
      codes: [...(before?.codes ?? []), operation],
      car: tagOf(car),
      length: millimetres(length),
      count,
      by: `${people[row.by]?.name ?? row.by}, ${when(row.at)}`,
      again: { item, piece: { car: car.id, piece, length: row.length, count } },
    });
  }
  return [...found.values()];
};

/** What lies in the rack of an item. */
const rackWords =
  ({ remnants, people }: Shop, when: (at: string) => string) =>
  (item: string): CutRack => {
    const row = remnants[item];
    const lengths = (remnantsOf(remnants)[item] ?? []).map(({ length }) => millimetres(length));
    const by = row === undefined ? '' : lookedWords(row, people, when);
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

/** `, counted Mon 9:15 by Tom Ness, sawn since by Ada Wren 10:02`. */
const lookedWords = (
  { by, at, sawn, isUncounted }: RemnantRow,
  people: Shop['people'],
  when: (at: string) => string,
): string => {
  const name = (id: string): string => people[id]?.name ?? id;
  if (isUncounted === true) return ', left by the saw; nobody has counted what else lies there';
  const since = sawn === undefined ? '' : `, sawn since by ${name(sawn.by)} ${when(sawn.at)}`;
  return `, counted ${when(at)} by ${name(by)}${since}`;
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
