/**
 * When something must be there. Until there is a schedule, this is reckoned: one car's unfinished work in the plan's order,
 * stage by stage, one piece after another, so many minutes a day. Waits, work outside and other cars are left out, so that it
 * is too early rather than too late.
 */
import { shopDayAfter } from '@/lib/domain/base/days';
import type { ShopDays } from '@/lib/domain/base/days';
import type { Day, StateKey } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';

export interface Reckoning {
  readonly today: Day;
  /** Minutes of work that are done on one car in one day. */
  readonly minutesADay: number;
  readonly days: ShopDays;
}

/** Seven hours on five days a week: common practice, no source. Until a shop keeps a calendar of its own. */
export const USUAL_WEEK: Pick<Reckoning, 'minutesADay' | 'days'> = {
  minutesADay: 420,
  days: { shut: [6, 7], closed: [] },
};

/** When, and what that rests on: every screen says so. */
export interface NeedBy {
  readonly day: Day;
  readonly basis: 'now' | 'plan-minutes';
  /** Minutes of work that stand before it. */
  readonly minutesBefore: number;
}

interface Known {
  readonly plan: CompiledPlan;
  readonly before: ReadonlyMap<StateKey, number>;
}
const known = new WeakMap<Car, Known>();

/** Minutes of unfinished work that stand before each unfinished operation. Work that runs has none before it. */
const minutesBefore = (plan: CompiledPlan, car: Car): ReadonlyMap<StateKey, number> => {
  const kept = known.get(car);
  if (kept?.plan === plan) return kept.before;
  const before = new Map<StateKey, number>();
  let sum = 0;
  // The order of the plan within a stage; a sort keeps it.
  for (const { stateKey, minutes } of [...plan.all.operations].sort((a, b) => a.stage - b.stage)) {
    const status = car.operations[stateKey]?.status;
    if (status === 'finished') continue;
    before.set(stateKey, status === 'running' || status === 'paused' ? 0 : sum);
    sum += minutes;
  }
  known.set(car, { plan, before });
  return before;
};

/** The day on which work is reached; what waits for no work is needed now. */
export const needBy = (plan: CompiledPlan, car: Car, work: StateKey | null, at: Reckoning): NeedBy => {
  const minutes = work === null ? undefined : minutesBefore(plan, car).get(work);
  if (minutes === undefined) return { day: at.today, basis: 'now', minutesBefore: 0 };
  return {
    day: dayAfter(at, Math.floor(minutes / Math.max(1, at.minutesADay))),
    basis: 'plan-minutes',
    minutesBefore: minutes,
  };
};

/** Hundreds of lines fall on a few dozen days: each is counted out once. */
const counted = new WeakMap<Reckoning, Map<number, Day>>();

const dayAfter = (at: Reckoning, count: number): Day => {
  const days = counted.get(at) ?? new Map<number, Day>();
  counted.set(at, days);
  const before = days.get(count);
  if (before !== undefined) return before;
  const day = shopDayAfter(at.today, count, at.days);
  days.set(count, day);
  return day;
};
