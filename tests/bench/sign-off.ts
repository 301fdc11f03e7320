/**
 * Sign-offs over HTTP, eight clients at once, against a bare handler that asks for the same session and does one insert
 * in a transaction: same server, same client, same database, turn by turn in one run (goal: at least half of its
 * throughput). Told beside it: the same against a handler that asks for no session either. The PIN's hash, which alone
 * takes most of a core, is measured apart. `npm run bench:sign-off`
 */
import { randomUUID } from 'node:crypto';
import { Agent, createServer, request as ask } from 'node:http';
import type { IncomingMessage, Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import pg from 'pg';
import { copyDatabase, urlAs } from '@/lib/cli/starting/roles';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { setCredential } from '@/lib/server/auth/credentials';
import { seatOf, startSession } from '@/lib/server/auth/session-row';
import type { Seat } from '@/lib/server/auth/session-row';
import { enrolTablet } from '@/lib/server/auth/tablets';
import { deviceIdOf, newToken } from '@/lib/server/auth/tokens';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { answerTo } from '@/lib/server/door';
import { runCommand } from '@/lib/server/run-command';
import type { DoorRequest } from '@/lib/wire/door';
import { readDoorRequest } from '@/lib/wire/door-schema';
import { PASSWORDS, startTestCluster, TEMPLATE } from '@/tests/support/postgres-global';
import { StoredShop } from '@/tests/support/stored-shop';

const CLIENTS = 8;
const JOINTS = 150;
const TURNS = 8;
const PIN = '270591';

const joints = Array.from({ length: JOINTS }, (_, n) => `J-${String(n + 1)}`);
const document: PlanDocument = {
  plan: 'Bench',
  revision: '1',
  stages: { AX: { name: 'Axles' } },
  operations: { 'AX-010': { name: 'All of it', stage: 'AX', body: joints.map((key) => `final ${key}`) } },
  joints: Object.fromEntries(
    joints.map((key) => [
      key,
      { name: key, fasteners: 2, method: 'click', torque: '40 ± 4 N·m', source: 'invented' },
    ]),
  ),
};

type Handler = (body: string, seat: Seat) => Promise<string>;

const insert = async (db: Database, body: string): Promise<string> => {
  const { command } = JSON.parse(body) as { command: { id: string } };
  await db.$transaction((tx) => tx.$executeRaw`INSERT INTO bench (id, body) VALUES (${command.id}, ${body})`);
  return 'done';
};

const handlers = (db: Database): Readonly<Record<string, Handler>> => ({
  '/bare': (body) => insert(db, body),
  '/sign-off': async (body, seat) => {
    const { command } = read(body, seat);
    const answer = await runCommand(db, seat.zone, {
      command,
      actor: seat.person.id,
      present: null,
      device: seat.device,
      lastContact: null,
      isInOrder: true,
      now: new Date().toISOString(),
    });
    return answer.outcome;
  },
  '/door': async (body, seat) => (await answerTo(db, read(body, seat), seat)).outcome,
});

const read = (body: string, seat: Seat): DoorRequest => {
  const found = readDoorRequest(body, seat.zone);
  if (!found.ok) throw new Error(JSON.stringify(found.error));
  return found.value;
};

const bodyOf = async (message: IncomingMessage): Promise<string> => {
  const parts: Buffer[] = [];
  for await (const part of message) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
};

const serve = async (db: Database): Promise<{ server: Server; port: number }> => {
  const routes = handlers(db);
  const server = createServer((message, response) => {
    void (async () => {
      try {
        if (message.url === '/open') {
          response.end(await insert(db, await bodyOf(message)));
          return;
        }
        const seat = await seatOf(db, message.headers.authorization ?? '');
        const handler = routes[message.url ?? ''];
        if (seat === null || handler === undefined) throw new Error('nobody, or nothing');
        response.end(await handler(await bodyOf(message), seat));
      } catch (error) {
        response.statusCode = 500;
        response.end(String(error));
      }
    })();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { server, port: (server.address() as AddressInfo).port };
};

const agent = new Agent({ keepAlive: true, maxSockets: CLIENTS });

const post = (port: number, path: string, token: string, body: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const sent = ask(
      { port, path, agent, method: 'POST', host: '127.0.0.1', headers: { authorization: token } },
      (response) => {
        bodyOf(response).then(resolve, reject);
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });

interface Run {
  readonly perSecond: number;
  readonly milliseconds: readonly number[];
}

const cluster = await startTestCluster([]);
const url = async (name: string): Promise<string> => {
  await copyDatabase(cluster.url, name, TEMPLATE);
  return urlAs(cluster.url, 'app', PASSWORDS, name);
};
const db = openDatabase(await url('bench'), 10);
const root = new pg.Client({ connectionString: `${cluster.url.replace(/\/postgres$/, '')}/bench` });
await root.connect();
await root.query('CREATE TABLE bench (id text PRIMARY KEY, body text NOT NULL)');
await root.query('GRANT INSERT ON bench TO slipmark_app');
await root.end();

const shop = await StoredShop.on(db, document);
// A person has one running clock and a wrench is in one hand at a time: each client is somebody with a wrench of their
// own, whose cycles are counted.
const hand = (client: number): string => `hand-${String(client)}`;
for (let n = 0; n < CLIENTS; n += 1) {
  await shop.must('leo', {
    type: 'add-person',
    person: hand(n),
    name: `Hand ${String(n)}`,
    roles: ['technician'],
  });
  await setCredential(db, hand(n), { pin: PIN }, { unchecked: true });
  await shop.must('leo', {
    type: 'add-tool',
    tool: `W-${String(n)}`,
    name: `click wrench ${String(n)}`,
    kind: 'click',
    low: '5',
    high: '100',
    unit: 'N·m',
    calibrated: { on: '2026-01-05', due: '2036-12-31' },
    cycleLimit: 1_000_000,
  });
}
/** PINs are taken on the shop's tablets only. */
const signedIn = async (n: number): Promise<string> => {
  const tablet = newToken();
  await enrolTablet(db, deviceIdOf(tablet), { name: `Bench ${String(n)}`, minutes: 30 }, 'ada');
  return startSession(db, hand(n), tablet);
};
const tokens: string[] = [];
for (let n = 0; n < CLIENTS; n += 1) tokens.push(await signedIn(n));
const { server, port } = await serve(db);

let cars: readonly string[] = [];
let made = 0;
/** Each client is at a car of its own, as in a shop, and leaves the one before. */
const freshCars = async (): Promise<readonly string[]> => {
  const operation = 'AX-010';
  for (const [n, car] of cars.entries())
    await shop.must(hand(n), { type: 'pause-operation', car, operation });
  cars = Array.from({ length: CLIENTS }, () => `B${String((made += 1))}`);
  for (const [n, car] of cars.entries()) {
    await shop.startCar(car);
    await shop.must(hand(n), { type: 'start-operation', car, operation });
  }
  return cars;
};

const bodyFor = (client: number, car: string, joint: string, isSigned: boolean): string => {
  const tool = `W-${String(client)}`;
  const claim = { type: 'final-joint', car, joint, tool, setting: '40', passes: [[1, 2]] };
  const command = { id: randomUUID(), doneAt: new Date().toISOString(), claim };
  return JSON.stringify({ command, ...(isSigned ? { signer: { person: hand(client), pin: PIN } } : {}) });
};

const measure = async (path: string, wanted: string, count: number): Promise<Run> => {
  const names = await freshCars();
  const milliseconds: number[] = [];
  const began = performance.now();
  await Promise.all(
    names.map(async (car, client) => {
      for (const joint of joints.slice(0, count)) {
        const start = performance.now();
        const said = await post(
          port,
          path,
          tokens[client] ?? '',
          bodyFor(client, car, joint, path === '/door'),
        );
        milliseconds.push(performance.now() - start);
        if (said !== wanted) throw new Error(`${path} answered ${said}`);
      }
    }),
  );
  const seconds = (performance.now() - began) / 1000;
  return { perSecond: (CLIENTS * count) / seconds, milliseconds: milliseconds.sort((a, b) => a - b) };
};

const at = (list: readonly number[], share: number): string =>
  (list[Math.min(list.length - 1, Math.floor(list.length * share))] ?? 0).toFixed(1);
const told = (name: string, { perSecond, milliseconds }: Run, more = ''): void =>
  console.log(
    `${name.padEnd(34)}${perSecond.toFixed(0).padStart(6)} /s   p50 ${at(milliseconds, 0.5)} ms   p99 ${at(milliseconds, 0.99)} ms   ${more}`,
  );

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
const median = (list: readonly number[]): number => {
  const sorted = [...list].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
};

// A shop's server is warm: each connection knows its statements.
for (const [path, wanted] of [
  ['/open', 'done'],
  ['/bare', 'done'],
  ['/sign-off', 'accepted'],
] as const)
  await measure(path, wanted, JOINTS);
const ratios: number[] = [];
const open: number[] = [];
for (let turn = 0; turn < TURNS; turn += 1) {
  const bare = await measure('/bare', 'done', JOINTS);
  const signed = await measure('/sign-off', 'accepted', JOINTS);
  const unasked = await measure('/open', 'done', JOINTS);
  ratios.push(signed.perSecond / bare.perSecond);
  open.push(signed.perSecond / unasked.perSecond);
  told('bare insert behind a session', bare);
  told('sign-off behind a session', signed, `${percent(signed.perSecond / bare.perSecond)}, wanted 50`);
}
told('sign-off with the signer’s PIN', await measure('/door', 'accepted', 25));
console.log(`median of the ratio: ${percent(median(ratios))}`);
console.log(`  against an insert that asks for no session: ${percent(median(open))}`);

server.close();
agent.destroy();
await db.$disconnect();
await cluster.stop();
