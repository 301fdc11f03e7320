/** Two processes' hubs on one database: what one commits, the screens of the other show. */
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { endSession, startSession } from '@/lib/server/auth/session-row';
import { tokenHash } from '@/lib/server/auth/tokens';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { LiveHub } from '@/lib/server/live/hub';
import type { HubTimes } from '@/lib/server/live/hub';
import { LISTENER_NAME } from '@/lib/server/live/listener';
import { loadCar } from '@/lib/server/load/car';
import { loadShop } from '@/lib/server/load/shop';
import { boardView } from '@/lib/server/queries/board';
import type { LiveMessage, News, Stand } from '@/lib/wire/live';
import { LiveReader, tells } from '@/tests/support/live-reader';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
let root: pg.Client;
let session: string;
const dbs: Database[] = [];
let hubs: LiveHub[] = [];

const sessionOf = (token: string): string => tokenHash(token);

beforeAll(async () => {
  shop = await StoredShop.open();
  await shop.startCar('A-1');
  await shop.startCar('A-2');
  session = sessionOf(await startSession(shop.db, 'leo', 'desk'));
  root = new pg.Client({ connectionString: shop.at.superUrl });
  await root.connect();
});
afterAll(async () => {
  await root.end();
  await Promise.all(dbs.map((db) => db.$disconnect()));
  await shop.close();
});
afterEach(async () => {
  await Promise.all(hubs.map((hub) => hub.stop()));
  hubs = [];
});

/** As another process has it: a pool and a memory of its own. */
const hub = (times: Partial<HubTimes> = {}): LiveHub => {
  const db = openDatabase(shop.at.url, 3);
  dbs.push(db);
  const made = new LiveHub(db, shop.at.url, times);
  hubs.push(made);
  return made;
};

const watch = async (on: LiveHub, as = session): Promise<LiveReader> => {
  const stream = await on.watch(as);
  if (stream === null) throw new Error('it has no room');
  return new LiveReader(stream);
};

const isStand = (message: LiveMessage): message is Stand => message.kind === 'stand';
const isNews = (message: LiveMessage): message is News => message.kind === 'news';
const newsOf = (reader: LiveReader): readonly News[] => reader.messages.filter(isNews);

const note = (car: string, text: string): Promise<void> =>
  shop.must('tom', { type: 'add-note', car, of: 'AX-010', text });
const versionOf = async (car: string): Promise<number> => (await loadCar(shop.db, car))?.version ?? 0;

/** Ends the ears of all hubs of this database, as a restarted or failing server would. */
const cutEars = async (): Promise<number> => {
  const { rows } = await root.query(
    'SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = $1 AND datname = current_database()',
    [LISTENER_NAME],
  );
  return rows.length;
};

describe('two hubs on one database', () => {
  let readers: readonly LiveReader[];
  beforeEach(async () => {
    readers = await Promise.all([watch(hub()), watch(hub())]);
  });

  test('both tell first where all stands, as a board that is asked for says it', async () => {
    const lead = (await loadShop(shop.db)).people['leo'];
    if (lead === undefined) throw new Error('no lead');
    const view = await boardView(shop.db, lead);
    for (const reader of readers) {
      const stand = await reader.until(isStand);
      expect(stand.clock).toBe(view.clock);
      expect(stand.versions['car:A-1']).toBe(await versionOf('A-1'));
      expect(stand.versions['shop']).toBe((await loadShop(shop.db)).version);
    }
  });

  test('tell what either process commits, with the row that a board would be given', async () => {
    await shop.must('leo', {
      type: 'place-hold',
      car: 'A-1',
      scope: 'work',
      reason: 'cracked tab',
      things: [],
    });
    const version = await versionOf('A-1');
    const lead = (await loadShop(shop.db)).people['leo'];
    if (lead === undefined) throw new Error('no lead');
    const asked = await boardView(shop.db, lead);
    for (const reader of readers) {
      const news = await reader.until(tells('car:A-1', version));
      if (!isNews(news)) throw new Error('no news');
      expect(news.clock).toBe(asked.clock);
      expect(news.says).toBe(asked.says);
      expect(news.rows).toEqual(asked.groups.flatMap(({ cars }) => cars).filter(({ id }) => id === 'A-1'));
      expect(news.groups).toEqual(
        asked.groups.map((group) => ({ ...group, cars: group.cars.map(({ id }) => id) })),
      );
    }
  });

  test('a car that is begun comes to every board, in its place', async () => {
    await shop.startCar('A-0');
    for (const reader of readers) {
      const news = await reader.until(tells('car:A-0', 1));
      if (!isNews(news)) throw new Error('no news');
      expect(news.groups[0]?.cars.slice(0, 2)).toEqual(['A-0', 'A-1']);
      expect(news.rows.map(({ id }) => id)).toContain('A-0');
    }
  });

  test('a suspect tool changes the rows of every car that it was used on, and no others', async () => {
    await shop.carAtOpenGate('B-1');
    await readers[0]?.until(tells('car:B-1', await versionOf('B-1')));
    await shop.must('leo', {
      type: 'suspect-tool',
      tool: 'T-02',
      from: '2026-01-05T00:00:00.000Z',
      reason: 'dropped',
    });
    const { version } = await loadShop(shop.db);
    for (const reader of readers) {
      const news = await reader.until(tells('shop', version));
      if (!isNews(news)) throw new Error('no news');
      expect(news.rows.map(({ id }) => id)).toEqual(['B-1']);
      expect(news.rows[0]?.gate.length).toBeGreaterThan(0);
    }
  });

  test('hundreds of commits from several at once: nothing missed, nothing out of order, at the end all is told', async () => {
    await Promise.all(
      ['A-1', 'A-2'].flatMap((car) =>
        [1, 2].map(async (hand) => {
          for (let n = 0; n < 60; n += 1) await note(car, `${String(hand)} ${String(n)}`);
        }),
      ),
    );
    for (const reader of readers) {
      for (const car of ['A-1', 'A-2']) await reader.until(tells(`car:${car}`, await versionOf(car)));
      const news = newsOf(reader);
      const clocks = news.map(({ clock }) => clock);
      expect(clocks).toEqual([...clocks].sort((a, b) => a - b));
      for (const car of ['A-1', 'A-2']) {
        const rows = news.flatMap((each) => each.rows).filter(({ id }) => id === car);
        const versions = rows.map(({ version }) => version);
        expect(versions).toEqual([...versions].sort((a, b) => a - b));
        expect(versions.at(-1)).toBe(await versionOf(car));
      }
      expect(clocks.at(-1)).toBe(
        Number((await root.query<{ sum: string }>('SELECT sum(version) FROM stream')).rows[0]?.sum),
      );
      // Several in a row are one look.
      expect(news.length).toBeLessThan(240);
    }
  });

  test('everybody gets the same bytes', async () => {
    const [first] = hubs;
    if (first === undefined) throw new Error('no hub');
    const raw = await Promise.all([first.watch(session), first.watch(session)]);
    await note('A-1', 'the same for all');
    const version = await versionOf('A-1');
    const texts = await Promise.all(raw.map((stream) => textUntil(stream, `"car:A-1":${String(version)}`)));
    expect(texts[0]).toBe(texts[1]);
  });
});

const textUntil = async (stream: ReadableStream<Uint8Array> | null, wanted: string): Promise<string> => {
  if (stream === null) throw new Error('it has no room');
  const reader = stream.getReader();
  let text = '';
  while (!text.includes(wanted)) {
    const { value, done } = await reader.read();
    if (done) break;
    text += new TextDecoder().decode(value);
  }
  await reader.cancel();
  return text.slice(0, text.indexOf(wanted));
};

describe('a line that is cut', () => {
  test('between process and database is noticed, mended, and what was missed meanwhile is told', async () => {
    // So seldom asked that only the mended line can tell.
    const reader = await watch(hub({ askEvery: 600_000, deafFor: 60_000 }));
    await reader.until(isStand);
    for (let round = 0; round < 3; round += 1) {
      const [cut] = await Promise.all([cutEars(), note('A-1', `cut ${String(round)}`), note('A-2', 'too')]);
      expect(cut).toBe(1);
      for (const car of ['A-1', 'A-2']) await reader.until(tells(`car:${car}`, await versionOf(car)));
      // The ear is there again before it is cut again.
      await vi.waitUntil(async () => (await earsOpen()) === 1, { timeout: 10_000 });
    }
    const clocks = newsOf(reader).map(({ clock }) => clock);
    expect(clocks).toEqual([...clocks].sort((a, b) => a - b));
  });

  test('a notification that never came is found by asking', async () => {
    const reader = await watch(hub({ askEvery: 200 }));
    await reader.until(isStand);
    await root.query('ALTER TABLE stream DISABLE TRIGGER USER');
    await root.query(`UPDATE stream SET version = version + 1 WHERE id = 'car:A-2'`);
    await root.query(
      `UPDATE car SET row = row || jsonb_build_object('version', (row->>'version')::int + 1) WHERE id = 'A-2'`,
    );
    await reader.until(tells('car:A-2', await versionOf('A-2')));
  });

  test('a process that has heard nothing for long lets go of its screens, and of none that come', async () => {
    const deaf = hub({ deafFor: 300 });
    const reader = await watch(deaf);
    await reader.until(isStand);
    await mayConnect(false);
    try {
      await cutEars();
      expect(await reader.ended).toBe('closed');
      expect(await deaf.watch(session)).toBeNull();
    } finally {
      await mayConnect(true);
    }
    await vi.waitUntil(async () => (await deaf.watch(session)) !== null, { timeout: 15_000 });
  });
});

/** Of this database alone: other tests are on the same cluster. */
const mayConnect = async (may: boolean): Promise<void> => {
  const name = new URL(shop.at.url).pathname.slice(1);
  for (const role of ['PUBLIC', 'slipmark_app'])
    await root.query(
      `${may ? 'GRANT' : 'REVOKE'} CONNECT ON DATABASE "${name}" ${may ? 'TO' : 'FROM'} ${role}`,
    );
};

const earsOpen = async (): Promise<number> =>
  (
    await root.query(
      `SELECT 1 FROM pg_stat_activity WHERE application_name = $1 AND datname = current_database() AND query LIKE 'SELECT id%'`,
      [LISTENER_NAME],
    )
  ).rows.length;

describe('those who may look no longer', () => {
  const isGone = (message: LiveMessage): boolean => message.kind === 'signed-out';

  test('a removed person is told and cut off at once; others look on', async () => {
    const one = hub({ checkEvery: 600_000 });
    const tess = await watch(one, sessionOf(await startSession(shop.db, 'tess', 'tablet')));
    const leo = await watch(one);
    await shop.must('leo', { type: 'remove-person', person: 'tess' });
    await tess.until(isGone);
    expect(await tess.ended).toBe('closed');
    await note('A-1', 'after that');
    await leo.until(tells('car:A-1', await versionOf('A-1')));
    expect(one.watchers.count).toBe(1);
    expect(newsOf(tess).every(({ versions }) => versions['car:A-1'] === undefined)).toBe(true);
  });

  test('a session that was ended is cut off at the next look', async () => {
    const one = hub({ checkEvery: 100 });
    const mine = sessionOf(await startSession(shop.db, 'tom', 'tablet'));
    const tom = await watch(one, mine);
    await tom.until(isStand);
    await endSession(shop.db, mine);
    await tom.until(isGone);
    expect(await tom.ended).toBe('closed');
  });
});

describe('one who does not read', () => {
  test('is let go before much waits for them, and nobody waits for them', async () => {
    const one = hub();
    const slow = await one.watch(session);
    const quick = await watch(one);
    await quick.until(isStand);
    for (let n = 0; one.watchers.count === 2 && n < 400; n += 1) {
      await note('A-1', `a long note about nothing much ${String(n)}`);
      await quick.until(tells('car:A-1', await versionOf('A-1')));
    }
    expect(one.watchers.count).toBe(1);
    await expect(slow?.getReader().read()).rejects.toThrow(/too slow/);
  });

  test('one person’s tabs are counted, and one who left makes room', async () => {
    const one = hub();
    const mine = sessionOf(await startSession(shop.db, 'ada', 'desk'));
    const tabs = [];
    for (let n = 0; n < 24; n += 1) tabs.push(await watch(one, mine));
    expect(await one.watch(mine)).toBeNull();
    expect(await one.watch(session)).not.toBeNull();
    await tabs[0]?.leave();
    expect(await one.watch(mine)).not.toBeNull();
  });
});

test('a hub that is stopped ends all that is open, and begins no more', async () => {
  const one = hub();
  const reader = await watch(one);
  await reader.until(isStand);
  await one.stop();
  expect(await reader.ended).toBe('closed');
  expect(await one.watch(session)).toBeNull();
});
