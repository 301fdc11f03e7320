/**
 * What two screens say differently about the same thing (D61): loose ends, where a car stands, its gate, its crew, its
 * next jobs and what waits for a second person, on the track board, the car's page, my work and the verify queue.
 */
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Person } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { boardView } from '@/lib/server/queries/board';
import { carView } from '@/lib/server/queries/car';
import { myWorkView } from '@/lib/server/queries/my-work';
import { eyesWaiting, verifyView } from '@/lib/server/queries/verify';
import type { BoardCar, BoardStage, BoardView } from '@/lib/wire/views/board';
import type { CarView, RowView } from '@/lib/wire/views/car';
import type { MyWorkView } from '@/lib/wire/views/my-work';
import type { VerifyView } from '@/lib/wire/views/verify';

interface Shown {
  readonly board: BoardView;
  readonly cars: ReadonlyMap<string, CarView>;
  readonly work: MyWorkView;
  readonly verify: VerifyView;
}

class Differences {
  readonly #found: string[] = [];

  get found(): readonly string[] {
    return this.#found;
  }

  add(line: string): void {
    this.#found.push(line);
  }

  /** The same fact, as each screen has it. */
  compare(what: string, ...said: readonly (readonly [screen: string, value: unknown])[]): void {
    const [first, ...others] = said.map(([screen, value]) => [screen, JSON.stringify(value)] as const);
    for (const [screen, value] of others)
      if (value !== first?.[1])
        this.add(`${what}: ${first?.[0] ?? ''} says ${first?.[1] ?? ''}, ${screen} says ${value}`);
  }
}

/** In words, one line for each; empty where all agree. */
export const differences = async (db: Database, id: PersonId, now: string): Promise<readonly string[]> => {
  const who = (await loadShop(db)).people[id];
  if (who === undefined) throw new Error(`nobody is called ${id}`);
  const shown = await everyScreen(db, who, now);
  const all = new Differences();
  const { board, work, verify } = shown;
  const rows = board.groups.flatMap(({ cars, stages }) => cars.map((car) => ({ car, stages })));
  for (const { car, stages } of rows) compareCar(all, car, stages, shown);
  const loose = rows.reduce((sum, { car }) => sum + car.loose, 0);
  all.compare(
    'loose ends of all cars',
    ['the line above the board', /(\d+) loose ends/.exec(board.says)?.[1]],
    ['its plates together', String(loose)],
  );
  compareWork(all, id, shown);
  all.compare(
    'joints that wait for this person',
    ['the verify queue', verify.mine.reduce((sum, { lines }) => sum + lines.length, 0)],
    ['the strip', await eyesWaiting(db, who, now)],
    ['my work', work.eyes],
  );
  compareVerify(all, shown);
  return all.found;
};

const everyScreen = async (db: Database, who: Person, now: string): Promise<Shown> => {
  const board = await boardView(db, who, now);
  const ids = board.groups.flatMap(({ cars }) => cars.map(({ id }) => id));
  const cars = new Map<string, CarView>();
  for (const id of ids) {
    const view = await carView(db, id, who.id, null, now);
    if (view !== null) cars.set(id, view);
  }
  const [work, verify] = [await myWorkView(db, who, null, now), await verifyView(db, who, now)];
  return { board, cars, work, verify };
};

const compareCar = (
  all: Differences,
  car: BoardCar,
  stages: readonly BoardStage[],
  { cars }: Shown,
): void => {
  const page = cars.get(car.id);
  if (page === undefined) {
    all.add(`${car.id} has no page`);
    return;
  }
  const { head } = page;
  const stands = stages[car.stage]?.name;
  all.compare(
    `loose ends of ${car.id}`,
    ['the board', car.loose],
    ['the count on its page', head.counts.ends],
    ['the list on its page', page.ends.reduce((sum, { rows }) => sum + rows.length, 0)],
  );
  all.compare(
    `the stage of ${car.id}`,
    ['the board', stands],
    ['the rail of its page', page.stages.find(({ state }) => state === 'now')?.name],
    ['the title of its page', /^In (.*?), /.exec(head.title)?.[1]],
  );
  for (const row of page.ends.flatMap(({ rows }) => rows))
    if (row.due?.isNow === true)
      all.compare(
        `the gate of ${row.name} of ${car.id}`,
        ['its line', row.due.text],
        ['the head of its page', head.counts.gateName],
      );
  all.compare(
    `what is settled on ${car.id}`,
    ['the board', car.way],
    ['its page', page.stages.map(({ cell }) => cell)],
  );
  all.compare(`the gate of ${car.id}`, ['the board', car.gate], ['its page', page.gate.lines]);
  all.compare(`how many hold ${car.id}`, ['the board', car.gate.length], ['its page', head.counts.gate]);
  all.compare(
    `the crew of ${car.id}`,
    ['the board', car.crew],
    ['its page', head.crew.map(({ initials, name }) => ({ initials, name }))],
  );
};

/** Each line of somebody's list is a line of the car's page, with the same name, gate and people. */
const compareWork = (all: Differences, me: PersonId, { cars, work }: Shown): void => {
  for (const { lines } of work.lists)
    for (const line of lines) {
      const page = cars.get(line.car.id);
      const row = page === undefined ? undefined : rowOf(page, line.id.slice(line.car.id.length + 1));
      if (row === undefined) {
        all.add(`${line.id} of my work has no line on the car’s page`);
        continue;
      }
      const what = `${line.name} of ${line.car.id}`;
      all.compare(`the name of ${what}`, ['my work', line.name], ['its page', row.name]);
      all.compare(`the gate of ${what}`, ['my work', line.due], ['its page', row.due]);
      if (line.why === 'given to you')
        all.compare(`whose ${what} is`, ['my work', true], ['its page', row.who.some(({ id }) => id === me)]);
    }
  const { opened } = work;
  if (opened === null) return;
  const page = cars.get(opened.car.id);
  all.compare(
    `loose ends of ${opened.car.id}`,
    ['my work', opened.car.loose],
    ['its page', page?.head.counts.ends],
  );
  all.compare(`the crew of ${opened.car.id}`, ['my work', opened.car.crew], ['its page', page?.head.crew]);
  all.compare(
    'what comes first',
    ['the job that is opened', `${opened.car.id} ${opened.id}`],
    ['the lists', work.lists.flatMap(({ lines }) => lines)[0]?.id],
  );
};

const rowOf = (page: CarView, job: string): RowView | undefined => {
  const anchor = page.places[`job:${job}`]?.at(-1);
  return [
    ...page.ends.flatMap(({ rows }) => rows),
    ...page.work.flatMap(({ rows }) => rows),
    ...page.parts,
  ].find(({ id }) => id === anchor);
};

/** What waits for a second person stands on the car's page under the same name, and holds the same gate. */
const compareVerify = (all: Differences, { cars, verify }: Shown): void => {
  for (const { car, lines } of [...verify.mine, ...verify.others])
    for (const line of lines) {
      const page = cars.get(car.id);
      const row = page?.ends.flatMap(({ rows }) => rows).find(({ name }) => name === line.name);
      if (line.waiting !== '' && row === undefined)
        all.add(`${line.name} of ${car.id} waits in the queue and is no loose end of its page`);
      if (line.gate !== null && row?.due !== undefined)
        all.compare(
          `the gate of ${line.name} of ${car.id}`,
          ['the queue', line.gate],
          ['its page', row.due?.text],
        );
    }
};
