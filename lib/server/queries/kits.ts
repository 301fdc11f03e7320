/** Reads kits: those to pick, soonest first, and one of them line by line. */
import 'server-only';
import { ZERO, compare, subtract } from '@/lib/domain/base/exact';
import type { Assessment, Job } from '@/lib/domain/assess';
import { assess } from '@/lib/domain/assess';
import { planOf } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { stillToPick } from '@/lib/domain/shop/kit-need';
import { lotOf, openOf } from '@/lib/domain/shop/shelf';
import { stockText } from '@/lib/domain/shop/stock';
import type { Database } from '@/lib/server/database';
import { loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { KitHead, KitPickLine, KitView, KitsView } from '@/lib/wire/views/kits';
import { weekdayWords, whenWords } from '@/lib/wire/views/when';
import { dueMark } from './car/lines';
import type { Given, Seen } from './car/seen';
import { see } from './car/seen';
import { comingWords, itemWords, kitNow, lacksWords, loadSupplies, unitOf } from './kits/supplies';
import type { KitLineNow, Supplies } from './kits/supplies';
import { jobHref, kitHref } from './my-work/opened';

const readFloor = async (
  db: Database,
  me: string,
  now: string,
): Promise<{ readonly givens: readonly Given[]; readonly supplies: Supplies }> => {
  const [shop, cars, setting] = await Promise.all([loadShop(db), loadFloor(db), shopSetting(db)]);
  const plans = await loadPlans(
    db,
    cars.map((car) => car.plan),
  );
  const facts = viewFacts(shop, cars, plans, me, now, setting.zone);
  const givens = cars.flatMap((car): readonly Given[] => {
    const plan = planOf(facts, car);
    return plan === null ? [] : [{ shop, car, plan, facts, setting, floor: cars }];
  });
  return { givens, supplies: await loadSupplies(db, shop, cars, facts.day) };
};

const RANK: Readonly<Record<Job['state'], number>> = { running: 0, paused: 1, ready: 2, waiting: 3 };

/** Kits of work that may begin or goes on, and of what is given to somebody next. */
export const kitsView = async (db: Database, me: string, now: string): Promise<KitsView> => {
  const { givens, supplies } = await readFloor(db, me, now);
  const found = givens.flatMap((given) =>
    jobsToPick(given, assess(given.plan, given.car, given.facts)).flatMap((job) => {
      const lines = kitNow(supplies, given.plan, given.car, job.key);
      return lines.length === 0 ? [] : [{ given, job, lines }];
    }),
  );
  const kits = found
    .toSorted(
      (a, b) =>
        RANK[a.job.state] - RANK[b.job.state] ||
        a.job.due - a.given.car.stage - (b.job.due - b.given.car.stage),
    )
    .map(({ given, job, lines }) => headOf(see(given), supplies, job, lines));
  const open = kits.filter(({ isWhole }) => !isWhole).length;
  return {
    says:
      open === 0
        ? 'No kit waits to be picked.'
        : `${open === 1 ? 'One kit' : `${String(open)} kits`} to pick, what comes first first.`,
    kits: kits.toSorted((a, b) => Number(a.isWhole) - Number(b.isWhole)),
  };
};

const jobsToPick = ({ car }: Given, { jobs }: Assessment): readonly Job[] =>
  jobs.filter(
    (job) =>
      job.kind === 'operation' &&
      (job.state !== 'waiting' ||
        (car.assignments[job.id]?.people.length ?? 0) > 0 ||
        car.kits[job.key] !== undefined),
  );

const STATE_WORDS: Readonly<Record<Job['state'], string>> = {
  running: 'running',
  paused: 'paused',
  ready: 'may begin',
  waiting: 'waits',
};

const headOf = (seen: Seen, supplies: Supplies, job: Job, lines: readonly KitLineNow[]): KitHead => {
  const { car, plan, words } = seen;
  const picked = lines.filter((line) => compare(stillToPick(line), ZERO) === 0).length;
  const who = whoWords(seen, job.id);
  return {
    href: kitHref(car, job.key),
    car: { id: car.id, chassis: car.chassis, colour: car.colour },
    name: words.thing(job.key),
    says: [who, STATE_WORDS[job.state]].filter((each) => each !== '').join('; '),
    picked: `${String(picked)} of ${String(lines.length)} in the box`,
    isWhole: picked === lines.length,
    due: dueMark(seen, job.due),
    lacks: lacksWords(supplies, plan, lines, job.state),
  };
};

const whoWords = ({ car, tag }: Seen, job: string): string => {
  const people = (car.assignments[job]?.people ?? []).map((id) => tag(id).name);
  return people.length === 0 ? '' : `for ${people.join(', ')}`;
};

/** Null where there is no such car on the floor, or no such work on it. */
export const kitView = async (
  db: Database,
  me: string,
  asked: { readonly car: string; readonly operation: string },
  now: string,
): Promise<KitView | null> => {
  const { givens, supplies } = await readFloor(db, me, now);
  const given = givens.find(({ car }) => car.id === asked.car);
  const operation = given?.plan.operations.get(asked.operation);
  if (given === undefined || operation === undefined) return null;
  const seen = see(given);
  const { car, plan } = seen;
  const key = operation.stateKey;
  const run = car.operations[key]?.run ?? 1;
  const job = `operation:${key}:${String(run)}`;
  const lines = kitNow(supplies, plan, car, key).toSorted((a, b) =>
    (a.reach.bin ?? '~').localeCompare(b.reach.bin ?? '~', 'en'),
  );
  return {
    car: { id: car.id, chassis: car.chassis, colour: car.colour },
    operation: key,
    run,
    key: key.replace(/@L$/u, ', left').replace(/@R$/u, ', right'),
    says: [
      seen.nameOf(key) ?? key,
      whoWords(seen, job),
      `today ${weekdayWords(supplies.today, supplies.today)}`,
    ]
      .filter((each) => each !== '')
      .join('; '),
    workHref: jobHref(car, job),
    isOver: lines.length === 0,
    lines: lines.map((line) => lineView(seen, supplies, plan, key, line)),
  };
};

const FAULTS = { wrong: 'wrong part', damaged: 'damaged', missing: 'not there' } as const;

const lineView = (
  { car, tag, setting }: Seen,
  supplies: Supplies,
  plan: CompiledPlan,
  operation: string,
  line: KitLineNow,
): KitPickLine => {
  const { item, wanted, picked, reach, lack } = line;
  const unit = unitOf(supplies, item);
  const left = stillToPick(line);
  const over = subtract(picked, wanted);
  const report = car.kits[operation]?.reports.find((each) => each.item === item);
  const coming = comingWords(supplies, item);
  const from = openOf(supplies.shelf, item, car.id).map((each) => ({
    lot: lotOf(each),
    quantity: stockText(each.quantity),
  }));
  return {
    item,
    name: itemWords(supplies, plan, item),
    unit: unit === 'pc' ? '' : unit,
    bin: reach.bin,
    wanted: stockText(wanted),
    left: stockText(left),
    inBox: stockText(picked),
    isPicked: compare(left, ZERO) === 0,
    over: compare(over, ZERO) > 0 ? stockText(over) : '',
    says: reach.lot === null ? 'By bin, no lot.' : `Lot ${reach.lot}.`,
    from,
    lacks:
      compare(lack, ZERO) === 0
        ? ''
        : `${compare(reach.good, ZERO) === 0 ? 'None' : `Only ${stockText(reach.good)}`} on the shelf by the books; ${coming}.`,
    coming,
    report:
      report === undefined
        ? ''
        : `${FAULTS[report.what]}, said ${tag(report.by, report.at).name} ${whenWords(setting.zone, supplies.today)(report.at)}`,
  };
};
