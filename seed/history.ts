/** One Corbel 54 from strip to delivery, played through the rulebook by the greedy driver. Deterministic; invented. */
import type { Stage } from '@/lib/domain/play';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { EMPTY_WORLD } from '@/lib/domain/world';
import { DEMO_LEAD, DEMO_OWNER, DEMO_PEOPLE, demoTools } from './demo-shop';
import { Driver } from './driver';
import type { GivenLine } from './driver';

export const FIRST_MORNING = '2026-01-05T07:30:00.000Z';

/** The demo shop keeps Greenwich time, so that the day of an instant is written in it. */
const dayOf = (at: string): string => at.slice(0, 10);

/** The shop's books filled and one car begun; options left out are chosen by the driver when something asks for them. */
export const openShop = (
  document: PlanDocument,
  plan: string,
  car: { readonly id: string; readonly colour?: string; readonly options?: Readonly<Record<string, string>> },
): Driver => {
  const stage: Stage = { plans: { [plan]: document }, dayOf };
  const driver = new Driver(EMPTY_WORLD, stage, FIRST_MORNING);
  for (const person of DEMO_PEOPLE) driver.must(DEMO_OWNER, person);
  for (const tool of demoTools({ on: '2025-12-01', due: '2026-11-30' })) driver.must(DEMO_OWNER, tool);
  driver.must(DEMO_LEAD, {
    type: 'start-car',
    car: car.id,
    plan,
    chassis: car.id,
    ...(car.colour === undefined ? {} : { colour: car.colour }),
    ...(car.options === undefined ? {} : { options: car.options }),
  });
  return driver;
};

/** Every line from the empty book to the delivered car. Throws where the plan can't be finished. */
export const buildOne = (
  document: PlanDocument,
  plan: string,
  car: { readonly id: string; readonly options?: Readonly<Record<string, string>> },
): readonly GivenLine[] => {
  const driver = openShop(document, plan, car);
  const { stuck } = driver.drive(car.id);
  if (stuck !== null)
    throw new Error(`stuck in ${stuck.stage}: ${JSON.stringify(stuck.gate.unmet.slice(0, 3))}`);
  driver.must(DEMO_OWNER, { type: 'deliver-car', car: car.id });
  return driver.lines;
};
