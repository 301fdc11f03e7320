/**
 * The demo shop as it stands on one day: weeks of history, played through the rulebook. The same day gives the same
 * lines, all of them before its late morning. Everything in it is invented.
 */
import type { Day } from '@/lib/domain/base/vocabulary';
import type { ShopClaim } from '@/lib/domain/commands';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { STARTS_CLOCK } from '@/lib/domain/clocks';
import { play } from '@/lib/domain/play';
import type { Stage } from '@/lib/domain/play';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';
import { Calendar, addDays } from './floor/calendar';
import { buildCar011 } from './floor/car-011';
import { buildCar012 } from './floor/car-012';
import { buildCar013 } from './floor/car-013';
import { demoCommandId } from './floor/command-id';
import { laterLots, openingLots } from './floor/lots';
import { Rota } from './floor/rota';
import { DEMO_LEAD, DEMO_OWNER, DEMO_PEOPLE, DEMO_ZONE, TOOL_DROPPED, demoTools } from './demo-shop';
import { Driver } from './driver';
import type { GivenLine, Play } from './driver';

export interface DemoLines {
  /** In the order the shop heard them. */
  readonly lines: readonly GivenLine[];
  /** What does not change while they are played. */
  readonly stage: Stage;
}

export interface DemoDay extends DemoLines {
  /** As it stands after the last of them. */
  readonly world: World;
}

/** The books were opened so many days before the day that is shown. */
const OPENED = 20 * 7;

/** The day that is shown, from the time of the first line. */
export const shownDayOf = (opened: string, dayOf: (at: string) => Day): Day => addDays(dayOf(opened), OPENED);

export const demoLines = (document: PlanDocument, plan: string, today: Day): DemoLines => {
  const calendar = new Calendar(today, DEMO_ZONE);
  const stage: Stage = { plans: { [plan]: document }, dayOf: (at) => calendar.dayOf(Date.parse(at)) };
  const opened = addDays(today, -OPENED);
  const first = new Date(calendar.at(opened, '08:00')).toISOString();
  const driver = new Driver(EMPTY_WORLD, stage, first, { idOf: demoCommandId, playLine: alone });
  const floor = { driver, calendar, rota: new Rota() };
  const shop = (day: Day, time: string, by: string, claims: readonly ShopClaim[]): void => {
    driver.setClock(new Date(calendar.at(day, time)).toISOString());
    for (const claim of claims) driver.must(by, claim);
  };

  shop(opened, '08:00', DEMO_OWNER, DEMO_PEOPLE);
  const calibrated = { on: addDays(opened, -14), due: addDays(opened, 350), runOut: addDays(today, -13) };
  shop(opened, '08:30', DEMO_OWNER, demoTools(calibrated));
  shop(opened, '09:00', DEMO_LEAD, [{ type: 'release-plan', plan }]);
  shop(
    opened,
    '10:00',
    DEMO_OWNER,
    openingLots(document, (days) => addDays(opened, days)),
  );
  buildCar011(floor, plan);
  shop(calendar.day(33), '11:00', DEMO_LEAD, laterLots);
  shop(calendar.day(25), '09:10', DEMO_LEAD, [
    {
      type: 'record-calibration',
      tool: 'T-05',
      on: calendar.day(26),
      due: addDays(calendar.day(26), 364),
      certificate: 'Oakum Street 4471',
      asFound: [
        { set: '40', delivered: '40.4' },
        { set: '80', delivered: '79.6' },
      ],
    },
  ]);
  buildCar012(floor, plan);
  buildCar013(floor, plan);
  // Told the morning after; from when it fell, what was tightened with it is in doubt.
  const fell = new Date(calendar.at(calendar.day(2), '13:40')).toISOString();
  shop(calendar.day(1), '08:05', 'oswin', [
    { type: 'suspect-tool', tool: TOOL_DROPPED, reason: 'dropped', from: fell },
  ]);
  const lines = [...driver.lines].sort((a, b) => (a.now < b.now ? -1 : a.now > b.now ? 1 : 0));
  return { lines, stage };
};

/**
 * Cars are told one after another, so that one told later is at an earlier time: who was at work elsewhere then is the
 * rota's to know, and is asked of the rules when all is heard in the order of time.
 */
const alone: Play = (world, stage, line) => {
  const { claim } = line.command;
  if (!STARTS_CLOCK.has(claim.type) || !('car' in claim)) return play(world, stage, line);
  const { [claim.car]: car } = world.cars;
  const played = play({ ...world, cars: car === undefined ? {} : { [claim.car]: car } }, stage, line);
  return { ...played, world: { ...played.world, cars: { ...world.cars, ...played.world.cars } } };
};

export const demoDay = (document: PlanDocument, plan: string, today: Day): DemoDay => {
  const { lines, stage } = demoLines(document, plan, today);
  return { lines, stage, world: playedAgain(lines, stage) };
};

/** Cars were told one after another; heard in the order of time each line must still be answered as it was. */
const playedAgain = (lines: readonly GivenLine[], stage: Stage): World => {
  let world = EMPTY_WORLD;
  for (const line of lines) {
    const played = play(world, stage, line);
    const refused = played.verdict.ok ? [] : [...new Set(played.verdict.error.map(({ code }) => code))];
    if (refused.join() !== (line.refused ?? []).join())
      throw new Error(
        `${line.now} ${JSON.stringify(line.command.claim)}: ${refused.join(', ') || 'accepted'}`,
      );
    world = played.world;
  }
  return world;
};
