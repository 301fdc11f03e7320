/** Fills a database with the demo shop: its history, command by command, through the one write path. */
import type { Day } from '@/lib/domain/base/vocabulary';
import { setCredential } from '@/lib/server/auth/credentials';
import type { Database } from '@/lib/server/database';
import { keepPlan } from '@/lib/server/load/plan';
import { runCommand } from '@/lib/server/run-command';
import { shopDay } from '@/lib/wire/shop-day';
import { lastShownDay } from './floor/calendar';
import { demoCommandId } from './floor/command-id';
import { sow } from './floor/sow';
import { demoLines, shownDayOf } from './demo-day';
import { demoPlans } from './demo-plans';
import { DEMO_NAME, DEMO_PEOPLE, DEMO_SIGN_INS, DEMO_ZONE } from './demo-shop';
import type { GivenLine } from './driver';

export interface SeedOptions {
  /** The day on which the shop stands; else the last one whose morning is over. */
  readonly today?: Day;
}

/**
 * Seeds the demo. One that was cut off goes on where it stopped, on the day that it was begun for; one that is whole
 * is left as it is. Throws where the database holds another shop.
 */
export const seedDemo = async (
  db: Database,
  log: (line: string) => void,
  options: SeedOptions = {},
): Promise<void> => {
  await openBooks(db);
  const plans = demoPlans();
  for (const { document } of [plans.corbel, plans.lintel]) {
    const kept = await keepPlan(db, document);
    if (!('hash' in kept)) throw new Error(`the database holds another ${kept.taken}`);
  }
  const { lines } = demoLines(plans, await shownDay(db, options.today));
  const [people, rest] = [lines.slice(0, DEMO_PEOPLE.length), lines.slice(DEMO_PEOPLE.length)];
  for (const line of people) await give(db, line);
  // Hashing takes its time on purpose, so it is done beside the rest.
  await Promise.all([signInsFor(db), sow(rest, (line) => giveAndSay(db, line, log))]);
  log(`${String(lines.length)} commands`);
};

const openBooks = async (db: Database): Promise<void> => {
  const before = await db.shopSetting.findUnique({ where: { id: 1 } });
  if (before !== null && !before.demo)
    throw new Error(`the database holds the shop “${before.name}”, which is not the demo`);
  await db.shopSetting.upsert({
    where: { id: 1 },
    create: { id: 1, name: DEMO_NAME, zone: DEMO_ZONE, demo: true },
    update: {},
  });
};

/** A seed that was begun stays on its day: its first command tells which that was. */
const shownDay = async (db: Database, wanted: Day | undefined): Promise<Day> => {
  const first = await db.command.findUnique({
    where: { id: demoCommandId(1) },
    select: { receivedAt: true },
  });
  if (first !== null) return shownDayOf(first.receivedAt.toISOString(), shopDay(DEMO_ZONE));
  return wanted ?? lastShownDay(new Date().toISOString(), DEMO_ZONE);
};

/** Those who have secrets already keep them. */
const signInsFor = async (db: Database): Promise<void> => {
  const known = await db.credential.findMany({ select: { person: true } });
  const missing = DEMO_SIGN_INS.filter(({ person }) => !known.some((each) => each.person === person));
  for (const { person, password, pin } of missing)
    await setCredential(db, person, { password, pin }, { unchecked: true });
};

const giveAndSay = async (db: Database, line: GivenLine, log: (line: string) => void): Promise<void> => {
  await give(db, line);
  const { claim } = line.command;
  if (claim.type === 'advance-car' && line.refused === undefined) log(`${claim.car} enters ${claim.to}`);
};

/** Every line must be answered as it was when the day was made. */
const give = async (db: Database, line: GivenLine): Promise<void> => {
  const { now, by, command, refused } = line;
  const answer = await runCommand(db, DEMO_ZONE, {
    command,
    actor: by,
    present: null,
    device: line.device ?? null,
    lastContact: line.lastContact ?? null,
    isInOrder: true,
    now,
  });
  const isAsMeant = answer.outcome === (refused === undefined ? 'accepted' : 'refused');
  if (!isAsMeant)
    throw new Error(`${now} ${by} ${JSON.stringify(command)} was answered with ${JSON.stringify(answer)}`);
};
