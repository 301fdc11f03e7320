/** Reads what one person's work page shows. */
import 'server-only';
import { assess } from '@/lib/domain/assess';
import { asksOn } from '@/lib/domain/asks';
import { planOf } from '@/lib/domain/facts';
import type { Person } from '@/lib/domain/shop/rows';
import { countInBox, inBox } from '@/lib/domain/shop/kit';
import { reachFor } from '@/lib/domain/shop/shelf';
import type { Database } from '@/lib/server/database';
import { loadFloor, viewFacts } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import type { MyWorkView } from '@/lib/wire/views/my-work';
import { shopDay, shopTime } from '@/lib/wire/shop-day';
import { whenWords } from '@/lib/wire/views/when';
import { dayInWords } from './board/words';
import type { Given } from './car/seen';
import { see } from './car/seen';
import { lacksWords, loadSupplies, partsNow } from './kits/supplies';
import type { Supplies } from './kits/supplies';
import { hoursOf } from './my-work/hours';
import type { Hours } from './my-work/hours';
import { listsOf, readyWords } from './my-work/lists';
import type { LacksOf } from './my-work/lists';
import { isWaiting, myJobs } from './my-work/order';
import type { MyJob } from './my-work/order';
import type { ReachOf } from './my-work/kit-lines';
import { askedLine, onCarPage, openedJob } from './my-work/opened';
import { eyesOn } from './verify/eyes';

/** Which job the address asks for. */
export interface AskedJob {
  readonly car: string;
  readonly job: string;
}

export const myWorkView = async (
  db: Database,
  who: Person,
  asked: AskedJob | null,
  now: string,
): Promise<MyWorkView> => {
  const [shop, cars, setting] = await Promise.all([loadShop(db), loadFloor(db), shopSetting(db)]);
  const plans = await loadPlans(
    db,
    cars.map((car) => car.plan),
  );
  const facts = viewFacts(shop, cars, plans, who.id, now, setting.zone);
  const givens = cars.flatMap((car): readonly Given[] => {
    const plan = planOf(facts, car);
    return plan === null ? [] : [{ shop, car, plan, facts, setting, floor: cars }];
  });
  const floor = givens.map((given) => ({
    ...given,
    assessment: assess(given.plan, given.car, facts),
  }));
  const jobs = myJobs(floor, facts, who.id);
  const named = jobs.find(({ car, job }) => car.id === asked?.car && job.id === asked.job);
  const first = named ?? jobs.find((each) => each.reason !== 'anybody' && !isWaiting(each));
  const given = givens.find(({ car }) => car.id === first?.car.id);
  const supplies = await loadSupplies(db, shop, cars, facts.day);
  const lacks = lacksOn(supplies);
  const opened =
    first === undefined || given === undefined
      ? null
      : openedJob(given, first.job, {
          reach: reachOn(supplies, given, first.job.key),
          shelf: supplies.shelf,
          lacks: isWaiting(first) ? '' : lacks(first),
        });
  const isLead = who.roles.includes('lead');
  const hours = await hoursOf(db, who.id, now, setting.zone);
  return {
    says: `${dayInWords(now, setting.zone)}. ${readyWords(jobs)}`,
    clocks: clocksOf(givens, jobs, hours),
    minutesToday: hours.minutesToday,
    opened,
    isSettled: asked !== null && named === undefined,
    lists: listsOf(givens, jobs, opened?.id ?? null, opened?.car.id ?? null, lacks),
    eyes: eyesOn(floor, facts, who.id).filter(({ mine }) => mine.may).length,
    asks: isLead
      ? givens.flatMap((each) => {
          const open = asksOn(each.car).filter(({ answer }) => answer === null);
          return open.length === 0 ? [] : open.map((one) => askedLine(see(each), one));
        })
      : [],
  };
};

/** Where everything of this car's plan lies now, and what of it is in the box of this work. */
const reachOn =
  ({ shop, shelf }: Supplies, { car }: Given, operation: string): ReachOf =>
  (item) => ({ ...reachFor(shop, shelf, item, car.id), picked: countInBox(inBox(car, operation), item) });

const lacksOn =
  (supplies: Supplies): LacksOf =>
  ({ car, plan, job }) =>
    lacksWords(supplies, plan, partsNow(supplies, plan, car, job), job.state);

/** By the rows, so that it agrees with every other screen; since when, the log says. */
const clocksOf = (
  givens: readonly Given[],
  jobs: readonly MyJob[],
  { running }: Hours,
): MyWorkView['clocks'] =>
  jobs.flatMap(({ car, job, reason }) => {
    const given = givens.find((each) => each.car.id === car.id);
    if (reason !== 'running' || given === undefined) return [];
    const { zone } = given.setting;
    const { day } = given.facts;
    const since =
      running.find((span) => span.car === car.id && span.operation === job.key)?.from ??
      car.operations[job.key]?.startedAt ??
      given.facts.now;
    const isToday = shopDay(zone)(since) === day;
    return [
      {
        name: see(given).words.thing(job.key),
        chassis: car.chassis,
        since,
        sinceText: isToday ? shopTime(zone)(since) : whenWords(zone, day)(since),
        href: onCarPage(car, job.key),
      },
    ];
  });
