/** The tray of the board: what may begin, what of it lacks parts, and that an open board is told when goods come in. Invented. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startSession } from '@/lib/server/auth/session-row';
import { tokenHash } from '@/lib/server/auth/tokens';
import { LiveHub } from '@/lib/server/live/hub';
import { loadShop } from '@/lib/server/load/shop';
import { boardView } from '@/lib/server/queries/board';
import type { ReadyTray } from '@/lib/wire/views/board';
import { LiveReader } from '@/tests/support/live-reader';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';

const PLAN = plan({
  items: { nut: { name: 'lock nut M10', reuse: 'once fitted', trace: 'lot' } },
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
  operations: {
    'WH-010': { name: 'Wheels on', stage: 'WH', minutes: 30 },
    'AX-010': { name: 'Axle on', stage: 'AX', minutes: 90, body: ['snug J-1'] },
    'AX-020': { name: 'Grease it', stage: 'AX', needs: ['AX-010'] },
  },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      hardware: { nut: 2 },
    },
  },
});

let shop: StoredShop;
let hub: LiveHub;
beforeAll(async () => {
  shop = await StoredShop.open(PLAN);
  await shop.startCar('C1');
  await shop.startCar('C2');
  hub = new LiveHub(shop.db, shop.at.url, { trayAfter: 20 });
});
afterAll(async () => {
  await hub.stop();
  await shop.close();
});

const linesIn = ({ ready, butForParts }: ReadyTray): readonly string[] =>
  [...ready.jobs, ...butForParts.jobs].map(({ chassis, key, takes, lacks }) =>
    [chassis, key, takes, lacks].filter((each) => each !== '').join(' · '),
  );

test('work of the gate ahead first; what lacks parts with what and when; told anew when goods come and when they go', async () => {
  const lead = (await loadShop(shop.db)).people['leo'];
  if (lead === undefined) throw new Error('no lead');
  const asked = async (): Promise<readonly string[]> => linesIn((await boardView(shop.db, lead)).tray);
  const lacks = '2 × lock nut M10 (none on order)';
  expect(await asked()).toEqual([
    'C1 · WH-010 · 30 min',
    'C2 · WH-010 · 30 min',
    `C1 · AX-010 · 1 h 30 min · ${lacks}`,
    `C2 · AX-010 · 1 h 30 min · ${lacks}`,
  ]);

  const stream = await hub.watch(tokenHash(await startSession(shop.db, 'leo', 'desk')));
  if (stream === null) throw new Error('no room');
  const reader = new LiveReader(stream);
  const told = async (isIt: (lines: readonly string[]) => boolean): Promise<void> => {
    await reader.until(
      (message) => message.kind === 'news' && message.tray !== undefined && isIt(linesIn(message.tray)),
    );
  };
  // Two nuts: each car could begin, and the shelf does not say whose they will be.
  await shop.must('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 2 });
  await told(
    (lines) => lines.includes('C1 · AX-010 · 1 h 30 min') && lines.includes('C2 · AX-010 · 1 h 30 min'),
  );
  // In the box of one of them they are nobody else's.
  await shop.must('tom', {
    type: 'pick-kit',
    car: 'C2',
    operation: 'AX-010',
    lines: [{ item: 'nut', lot: 'L-1', quantity: '2' }],
  });
  await told((lines) => lines.includes(`C1 · AX-010 · 1 h 30 min · ${lacks}`));
  expect(await asked()).toEqual([
    'C2 · AX-010 · 1 h 30 min',
    'C1 · WH-010 · 30 min',
    'C2 · WH-010 · 30 min',
    `C1 · AX-010 · 1 h 30 min · ${lacks}`,
  ]);

  // What must come out of a joint again wants new ones as well, and there are none.
  await shop.must('tom', { type: 'start-operation', car: 'C2', operation: 'AX-010' });
  await shop.must('tom', { type: 'snug-joint', car: 'C2', joint: 'J-1' });
  await shop.must('tom', { type: 'quarantine-lot', lot: 'L-1', reason: 'soft' });
  await told((lines) => lines.includes(`C2 · J-1 · ${lacks}`));
  await shop.must('leo', { type: 'receive-lot', lot: 'L-2', item: 'nut', quantity: 2 });
  await told((lines) => lines.includes('C2 · J-1'));
});
