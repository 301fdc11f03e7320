/**
 * The demo shop as it stands on one day: weeks of history, played through the rulebook. The same day gives the same
 * lines, all of them before its late morning. Everything in it is invented.
 */
import type { Day } from '@/lib/domain/base/vocabulary';
import { STARTS_CLOCK } from '@/lib/domain/clocks';
import { play } from '@/lib/domain/play';
import type { Stage } from '@/lib/domain/play';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';
import { Calendar, addDays } from './floor/calendar';
import { buildCar011 } from './floor/car-011';
import { buildCar012 } from './floor/car-012';
import { buildCar013 } from './floor/car-013';
import { buildCar014 } from './floor/car-014';
import { buildCar015 } from './floor/car-015';
import { buildLintel001 } from './floor/car-lintel-001';
import { demoCommandId } from './floor/command-id';
import { outsideWork } from './floor/outside';
import { Rota } from './floor/rota';
import { badNews, buying, counting, midway, opening } from './floor/shop-books';
import type { Shop } from './floor/shop-books';
import { DEMO_ZONE } from './demo-shop';
import type { DemoPlans } from './demo-plans';
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

export const demoLines = ({ corbel, lintel }: DemoPlans, today: Day): DemoLines => {
  const calendar = new Calendar(today, DEMO_ZONE);
  const plans = { [corbel.hash]: corbel.document, [lintel.hash]: lintel.document };
  const stage: Stage = { plans, dayOf: (at) => calendar.dayOf(Date.parse(at)) };
  const opened = addDays(today, -OPENED);
  const first = new Date(calendar.at(opened, '08:00')).toISOString();
  const driver = new Driver(EMPTY_WORLD, stage, first, { idOf: demoCommandId, playLine: alone });
  const floor = { driver, calendar, rota: new Rota() };
  const shop: Shop = (day, time, by, claims) => {
    driver.setClock(new Date(calendar.at(day, time)).toISOString());
    for (const claim of claims) driver.must(by, claim);
  };

  opening(shop, calendar, opened, corbel);
  buildCar011(floor, corbel.hash);
  midway(shop, calendar);
  buildCar012(floor, corbel.hash);
  buildCar013(floor, corbel.hash);
  buildCar014(floor, corbel.hash);
  buildCar015(floor, corbel.hash);
  shop(calendar.day(16), '15:30', 'mara', [{ type: 'release-plan', plan: lintel.hash }]);
  buildLintel001(floor, lintel.hash);
  outsideWork(floor, shop);
  badNews(shop, calendar);
  buying(shop, calendar);
  counting(shop, calendar, driver.world);
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

export const demoDay = (plans: DemoPlans, today: Day): DemoDay => {
  const { lines, stage } = demoLines(plans, today);
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
