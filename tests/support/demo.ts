/** The demo shop of a day, as the seed makes it; made once for each day in each test process. */
import { assess } from '@/lib/domain/assess';
import type { Assessment } from '@/lib/domain/assess';
import { planOf } from '@/lib/domain/facts';
import { factsAt } from '@/lib/domain/play';
import type { World } from '@/lib/domain/world';
import { demoDay } from '@/seed/demo-day';
import type { DemoDay } from '@/seed/demo-day';
import { demoPlans } from '@/seed/demo-plans';

export const PLANS = demoPlans();

const made = new Map<string, DemoDay>();

export const demoOn = (today: string): DemoDay => {
  const day = made.get(today) ?? demoDay(PLANS, today);
  made.set(today, day);
  return day;
};

/** What is true of a car at that time. */
export const assessAt = (
  stage: DemoDay['stage'],
  world: World,
  { car, by, now }: { readonly car: string; readonly by: string; readonly now: string },
): Assessment => {
  const row = world.cars[car];
  const command = { id: '', doneAt: now, claim: { type: 'deliver-car', car } as const };
  const facts = factsAt(world, stage, { now, by, command });
  const plan = row === undefined ? null : planOf(facts, row);
  if (row === undefined || plan === null) throw new Error(`no car ${car}`);
  return assess(plan, row, facts);
};
