/** The track board: every car on the floor, how far it has come, and what holds the gate before it. */
import 'server-only';
import { assess } from '@/lib/domain/assess';
import type { Assessment } from '@/lib/domain/assess';
import { COMMANDS } from '@/lib/domain/authority';
import type { Car } from '@/lib/domain/car/rows';
import type { Facts } from '@/lib/domain/facts';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Person, Shop } from '@/lib/domain/shop/rows';
import { withTimes } from '@/lib/wire/views/when';
import type {
  BoardCar,
  BoardGroup,
  BoardStage,
  BoardView,
  CrewCell,
  EmptyBoard,
  Mover,
} from '@/lib/wire/views/board';
import type { Database } from '@/lib/server/database';
import { loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { Setting } from '@/lib/server/load/shop';
import { cellsOf } from './board/cells';
import { asksOf, boardPeople } from './board/people';
import { counted, dayInWords, initialsOf, named } from './board/words';
import { lineOf } from './car/lines';
import type { Row } from './board/row';
import { trayOf } from './board/tray';
import { floorClock } from './clock';
import { loadSupplies } from './kits/supplies';

export const boardView = async (
  db: Database,
  who: Person,
  now = new Date().toISOString(),
): Promise<BoardView> => {
  // Before all else: what is shown may be newer than it says, never older.
  const clock = await floorClock(db);
  const [shop, cars, setting] = await Promise.all([loadShop(db), loadFloor(db), shopSetting(db)]);
  const plans = await loadPlans(
    db,
    cars.map((car) => car.plan),
  );
  const facts = viewFacts(shop, cars, plans, who.id, now, setting.zone);
  const rows = cars.flatMap((car) => rowOf(car, facts, setting.zone) ?? []);
  return {
    shop: setting.name,
    clock,
    says: floorSays(rows, facts, setting),
    mover: moverOf(shop, who),
    people: boardPeople(shop, who, facts.day),
    groups: groupsOf(rows, facts),
    tray: trayOf(rows, await loadSupplies(db, shop, cars, facts.day)),
    empty: rows.length > 0 ? null : emptyBoard(shop, who),
  };
};

/** Null where the car's plan is not among the facts. */
export const rowOf = (car: Car, facts: Facts, zone: string): Row | null => {
  const plan = planOf(facts, car);
  if (plan === null) return null;
  const assessment = assess(plan, car, facts);
  return { plan, car: carRow(plan, car, facts, zone, assessment), of: car, jobs: assessment.jobs };
};

export const floorSays = (rows: readonly Row[], facts: Facts, { zone }: Pick<Setting, 'zone'>): string => {
  const loose = rows.reduce((sum, { car }) => sum + car.loose, 0);
  return `${dayInWords(facts.now, zone)}. ${counted(rows.length, 'car')}, ${counted(loose, 'loose end')}.`;
};

const carRow = (
  plan: CompiledPlan,
  car: Car,
  facts: Facts,
  zone: string,
  { gate, looseEnds }: Assessment,
): BoardCar => {
  const spoken = withTimes(zone, facts.day);
  return {
    id: car.id,
    chassis: car.chassis,
    colour: car.colour,
    model: plan.document.plan,
    revision: plan.document.revision,
    version: car.version,
    stage: car.stage,
    crew: crewOf(plan, car, facts),
    given: plan.stages.map(({ key }) => car.assignments[`stage:${key}`]?.people ?? []),
    loose: looseEnds.length,
    hold: holdOf(car),
    way: cellsOf(plan, car, facts, zone),
    gate: gate.unmet.map((refusal) => lineOf({ car, plan, facts, spoken }, refusal)),
  };
};

/** Those who were given the stage, then those who are at work on the car. */
const crewOf = (plan: CompiledPlan, car: Car, facts: Facts): readonly CrewCell[] => {
  const given = car.assignments[`stage:${plan.stages[car.stage]?.key ?? ''}`]?.people ?? [];
  const present = Object.values(car.operations).flatMap((row) =>
    row.status === 'running' ? row.present : [],
  );
  return [...new Set([...given, ...present])].map((id) => {
    const name = facts.people[id]?.name ?? id;
    return { initials: initialsOf(name), name };
  });
};

/** A hold on things only stops those; one on the work or the gate stops the car. */
const holdOf = (car: Car): BoardCar['hold'] => {
  const standing = Object.entries(car.holds).filter(
    ([, hold]) => hold.releasedBy === null && hold.scope !== 'things',
  );
  const [first] = standing;
  if (first === undefined) return null;
  const [key, { reason }] = first;
  const others = standing.length - 1;
  return { mark: others === 0 ? key : `${key} +${String(others)}`, says: `${key} stands: ${reason}` };
};

const moverOf = (shop: Shop, who: Person): Mover => {
  const { roles } = COMMANDS['advance-car'];
  const may = (person: Person): boolean =>
    !person.left && (roles === 'anyone' || person.roles.some((role) => roles.includes(role)));
  if (may(who)) return { may: true, says: '' };
  const movers = Object.values(shop.people).filter(may);
  return {
    may: false,
    says:
      movers.length === 0
        ? 'Moving a car is for a lead, and the shop has none yet.'
        : `Moving a car is for a lead: ${named(movers.map(({ name }) => name))}.`,
  };
};

// ---- groups ----

/** Cars stand in one table where their stages are the same; another model has another way to go. */
export const groupsOf = (rows: readonly Row[], facts: Facts): readonly BoardGroup[] => {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const same = JSON.stringify(
      row.plan.stages.map(({ key, name, capacity, room }) => [key, name, capacity, room]),
    );
    const list = groups.get(same);
    if (list === undefined) groups.set(same, [row]);
    else list.push(row);
  }
  return [...groups.values()].flatMap((list) => {
    const [first] = list;
    if (first === undefined) return [];
    return [
      {
        name: named([...new Set(list.map(({ car }) => car.model))]),
        stages: stagesOf(first.plan, [...new Set(list.map(({ plan }) => plan))], facts),
        cars: list.map(({ car }) => car),
      },
    ];
  });
};

const stagesOf = (
  plan: CompiledPlan,
  plans: readonly CompiledPlan[],
  facts: Facts,
): readonly BoardStage[] => {
  const documents = plans.map(({ document }) => document);
  return plan.stages.map((stage) => {
    const { key, name, capacity, room } = stage;
    const asks = asksOf(plans, stage.index);
    if (capacity === null) return { key, name, room: '', asks };
    const taken = Object.entries(facts.occupancy)
      .filter(([hash]) => documents.some((document) => facts.plans[hash] === document))
      .reduce(
        (sum, [, stages]) => sum + room.reduce((cars, each) => cars + (stages[each]?.length ?? 0), 0),
        0,
      );
    return { key, name, room: roomText(taken, capacity, othersIn(plan, stage)), asks };
  });
};

const othersIn = (plan: CompiledPlan, { key, room }: CompiledPlan['stages'][number]): readonly string[] =>
  plan.stages.filter((other) => other.key !== key && room.includes(other.key)).map(({ name }) => name);

const roomText = (taken: number, capacity: number, sharedWith: readonly string[]): string => {
  // Beside the others' names there is no room for the word.
  if (taken > 0 && sharedWith.length > 0)
    return `${String(taken)} of ${String(capacity)}, with ${named(sharedWith)}`;
  // A car may begin where there is no room yet.
  if (taken > capacity) return `${String(taken)} here, room for ${String(capacity)}`;
  const text =
    taken === 0
      ? 'free'
      : capacity === 1 && taken === 1
        ? 'taken'
        : `${String(taken)} of ${String(capacity)} taken`;
  return sharedWith.length === 0 ? text : `${text}, with ${named(sharedWith)}`;
};

// ---- nothing to show ----

const emptyBoard = (shop: Shop, who: Person): EmptyBoard => {
  const { roles } = COMMANDS['start-car'];
  const mayBegin = roles === 'anyone' || who.roles.some((role) => roles.includes(role));
  const hasPlan = Object.keys(shop.plans).length > 0;
  const title = 'No car stands on the floor';
  if (!mayBegin)
    return {
      title,
      says: 'A lead or an owner begins one; it stands here the moment that is done.',
      href: null,
      act: null,
    };
  return {
    title,
    says: hasPlan
      ? 'Begin a car on one of the shop’s plans, and it stands in its first stage here.'
      : 'First the shop needs a build plan, then a car is begun on it.',
    href: '/set-up',
    act: hasPlan ? 'Begin a car' : 'Set up the shop',
  };
};
