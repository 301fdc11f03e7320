/** Killed in the middle, server or database: nothing that was acknowledged is lost, nothing is there by half (T1, T2). */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startCluster } from '@/lib/cli/starting/cluster';
import { copyDatabase, urlAs } from '@/lib/cli/starting/roles';
import { openDatabase } from '@/lib/server/database';
import { verifyLog } from '@/lib/server/log/verify';
import { PASSWORDS, startTestCluster, TEMPLATE } from '@/tests/support/postgres-global';
import type { TestCluster } from '@/tests/support/postgres-global';
import { StoredShop } from '@/tests/support/stored-shop';

const ROUNDS = 3;
const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

let cluster: TestCluster;
let url: string;
beforeAll(async () => {
  // With the settings that the shop runs with: what is acknowledged has been flushed.
  cluster = await startTestCluster([]);
  await copyDatabase(cluster.url, 'crash', TEMPLATE);
  url = urlAs(cluster.url, 'app', PASSWORDS, 'crash');
  const shop = await StoredShop.on(openDatabase(url, 3));
  for (const car of ['C1', 'C2']) await shop.startCar(car);
  await shop.db.$disconnect();
}, 60_000);
afterAll(() => cluster.stop());

interface Writer {
  readonly acknowledged: string[];
  readonly child: ChildProcess;
}

const startWriter = (tag: string): Writer => {
  const child = spawn(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'tests/support/writer.ts', url, tag],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const acknowledged: string[] = [];
  let rest = '';
  child.stdout.on('data', (part: Buffer) => {
    const lines = `${rest}${part.toString('utf8')}`.split('\n');
    // What stands behind the last line break was not acknowledged in full.
    rest = lines.pop() ?? '';
    acknowledged.push(...lines);
  });
  return { acknowledged, child };
};

const ended = ({ child }: Writer): Promise<void> =>
  child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise((resolve) => child.once('close', () => resolve()));

const untilBusy = async (writer: Writer, more: number): Promise<void> => {
  const wanted = writer.acknowledged.length + more;
  while (writer.acknowledged.length < wanted) {
    if (writer.child.exitCode !== null) throw new Error('the writer ended by itself');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

/** Every acknowledged command once, whole; and nothing that is half there. */
const allThere = async (acknowledged: readonly string[]): Promise<void> => {
  const db = openDatabase(url, 2);
  try {
    const commands = await db.command.findMany({
      select: { id: true, outcome: true, events: { select: { version: true } } },
    });
    const found = new Map(commands.map((each) => [each.id, each]));
    const lost = acknowledged.filter((id) => found.get(id)?.outcome !== 'accepted');
    expect(lost).toEqual([]);
    expect(acknowledged.filter((id) => found.get(id)?.events.length !== 1)).toEqual([]);
    expect(commands.filter(({ outcome }) => outcome === null)).toEqual([]);
    expect((await verifyLog(db)).faults).toEqual([]);
  } finally {
    await db.$disconnect();
  }
};

test(`the server killed ${String(ROUNDS)} times under load`, async () => {
  for (let round = 0; round < ROUNDS; round += 1) {
    const writer = startWriter(`server ${String(round)}`);
    await untilBusy(writer, 60 + 37 * round);
    writer.child.kill('SIGKILL');
    await ended(writer);
    await allThere(writer.acknowledged);
  }
}, 120_000);

test(`the database killed ${String(ROUNDS)} times under load`, async () => {
  for (let round = 0; round < ROUNDS; round += 1) {
    const writer = startWriter(`database ${String(round)}`);
    await untilBusy(writer, 60 + 41 * round);
    const [pid = ''] = readFileSync(join(cluster.cluster.folder, 'postmaster.pid'), 'utf8').split('\n');
    // Its children see that it is gone and end; none of them can write any more.
    process.kill(Number(pid), 'SIGKILL');
    await new Promise((resolve) => setTimeout(resolve, 300));
    writer.child.kill('SIGKILL');
    await ended(writer);
    await startCluster(cluster.cluster, cluster.port);
    await allThere(writer.acknowledged);
  }
}, 120_000);
