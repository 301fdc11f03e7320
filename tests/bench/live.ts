/**
 * How soon an open screen has what was signed elsewhere: two processes of the built server on one database, a hundred
 * screens at each, sign-offs by a third process. From the answer of `runCommand`, which is when the signer is told,
 * to the bytes at each screen. `npm run bench:live`
 */
import { Agent, get } from 'node:http';
import { fileURLToPath } from 'node:url';
import { encode } from 'next-auth/jwt';
import { someFreePort } from '@/lib/cli/starting/free-port';
import { preparePages } from '@/lib/cli/starting/prepare';
import { copyDatabase, urlAs } from '@/lib/cli/starting/roles';
import { serve } from '@/lib/cli/starting/serve';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { startSession } from '@/lib/server/auth/session-row';
import { openDatabase } from '@/lib/server/database';
import { PASSWORDS, startTestCluster, TEMPLATE } from '@/tests/support/postgres-global';
import { StoredShop } from '@/tests/support/stored-shop';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const PAGES = '.data/next-tests';
const SECRET = 'only for the bench';
const INSTANCES = 2;
const SCREENS = 200;
const TABS = 20;
const CARS = 12;
const JOINTS = 40;
const PER_SECOND = 12;
const WARM_UP = 24;
const GOAL_MS = 50;

const joints = Array.from({ length: JOINTS }, (_, n) => `J-${String(n + 1)}`);
const document: PlanDocument = {
  plan: 'Bench',
  revision: '1',
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
  operations: { 'AX-010': { name: 'All of it', stage: 'AX', body: joints.map((key) => `final ${key}`) } },
  joints: Object.fromEntries(
    joints.map((key) => [
      key,
      { name: key, fasteners: 2, method: 'click', torque: '40 ± 4 N·m', source: 'invented' },
    ]),
  ),
};

await preparePages(ROOT, PAGES);
const cluster = await startTestCluster([]);
await copyDatabase(cluster.url, 'bench', TEMPLATE);
const url = urlAs(cluster.url, 'app', PASSWORDS, 'bench');
const db = openDatabase(url, 5);
const shop = await StoredShop.on(db, document);
const cars = Array.from({ length: CARS }, (_, n) => `B${String(n + 1)}`);
// A person has one running clock: at each car is somebody of its own.
const handAt = (car: string): string => `hand-${car}`;
for (const car of cars) {
  await shop.startCar(car);
  const person = handAt(car);
  await shop.must('leo', { type: 'add-person', person, name: person, roles: ['technician'] });
  await shop.must(person, { type: 'start-operation', car, operation: 'AX-010' });
}

const servers = await Promise.all(
  Array.from({ length: INSTANCES }, async () => {
    const port = await someFreePort();
    const environment = {
      DATABASE_URL: url,
      NEXTAUTH_URL: `http://127.0.0.1:${String(port)}`,
      NEXTAUTH_SECRET: SECRET,
    };
    const hear = (text: string): void => void process.stdout.write(text);
    const server = serve({ root: ROOT, folder: PAGES, port, environment, hear });
    await server.open;
    return server;
  }),
);

/** What a screen was told, and when: `car version` → moment. */
type Told = Map<string, number>;
const agent = new Agent({ keepAlive: true, maxSockets: Infinity });
let bytes = 0;

/** Opens one screen; resolves when it was told where all stands. */
const openScreen = (address: string, cookie: string): Promise<Told> =>
  new Promise((resolve, reject) => {
    const told: Told = new Map();
    get(`${address}/api/live`, { agent, headers: { cookie } }, (answer) => {
      if (answer.statusCode !== 200) reject(new Error(`it answers ${String(answer.statusCode)}`));
      answer.on('data', (part: Buffer) => {
        const now = performance.now();
        bytes += part.length;
        const text = part.toString('latin1');
        if (text.includes('"kind":"stand"')) resolve(told);
        // One message may tell of several commits: each is seen with the newest.
        for (const [, car = '', version = ''] of text.matchAll(/"car:(B\d+)":(\d+)/g))
          if (!told.has(`${car} ${version}`)) told.set(`${car} ${version}`, now);
      });
      answer.on('error', reject);
    }).on('error', reject);
  });

const screens: Told[] = [];
let cookie = '';
for (let n = 0; n < SCREENS; n += 1) {
  if (n % TABS === 0) {
    const token = await startSession(db, 'leo', `device ${String(n)}`);
    cookie = `slipmark.session=${await encode({ token: { session: token }, secret: SECRET })}`;
  }
  screens.push(await openScreen(servers[n % INSTANCES]?.address ?? '', cookie));
}

interface Commit {
  readonly car: string;
  readonly version: number;
  readonly at: number;
}

const commits: Commit[] = [];
const sign = async (n: number): Promise<void> => {
  const car = cars[n % CARS] ?? '';
  const joint = joints[Math.floor(n / CARS)] ?? '';
  const claim = { type: 'final-joint', car, joint, tool: 'T-02', setting: '40', passes: [[1, 2]] } as const;
  const answer = await shop.give(handAt(car), claim);
  if (answer.outcome !== 'accepted') throw new Error(JSON.stringify(answer));
  commits.push({ car, version: answer.version, at: performance.now() });
};

bytes = 0;
const began = performance.now();
const signing: Promise<void>[] = [];
for (let n = 0; n < CARS * JOINTS; n += 1) {
  // At the hour, not after each other: a shop's people don't wait for each other either.
  const due = began + (n * 1000) / PER_SECOND;
  await new Promise((resolve) => setTimeout(resolve, Math.max(0, due - performance.now())));
  signing.push(sign(n));
}
await Promise.all(signing);
const seconds = (performance.now() - began) / 1000;
await new Promise((resolve) => setTimeout(resolve, 1000));

const seenAt = (told: Told, { car, version }: Commit): number | undefined => {
  for (let next = version; next < version + 20; next += 1) {
    const at = told.get(`${car} ${String(next)}`);
    if (at !== undefined) return at;
  }
  return undefined;
};
const counted = commits.slice(WARM_UP);
const waits: number[] = [];
let missed = 0;
for (const told of screens)
  for (const commit of counted) {
    const at = seenAt(told, commit);
    if (at === undefined) missed += 1;
    // The news may well be there before the signer's own answer.
    else waits.push(Math.max(0, at - commit.at));
  }
waits.sort((a, b) => a - b);
const quantile = (share: number): string =>
  (waits[Math.min(waits.length - 1, Math.floor(waits.length * share))] ?? NaN).toFixed(1);
console.log(
  `${String(SCREENS)} screens at ${String(INSTANCES)} servers, ${(commits.length / seconds).toFixed(1)} sign-offs a second, ${String(CARS)} cars on the floor`,
);
console.log(
  `commit to screen: p50 ${quantile(0.5)} ms   p95 ${quantile(0.95)} ms   p99 ${quantile(0.99)} ms (at most ${String(GOAL_MS)})   worst ${quantile(1)} ms   missed ${String(missed)} of ${String(waits.length + missed)}`,
);
console.log(`${(bytes / seconds / 1_000_000).toFixed(1)} MB/s to all screens`);

agent.destroy();
await Promise.all(servers.map((server) => server.stop()));
await db.$disconnect();
await cluster.stop();
