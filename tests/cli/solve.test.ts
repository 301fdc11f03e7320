/** `slipmark solve`: what is read, what is said, and that a thread of its own gives the same answer. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { solveOrderFile } from '@/lib/cli/solve-order';
import { solveInWorker } from '@/lib/solve/in-worker';
import { solveOrder } from '@/lib/solve/order/solve';
import { readCuttingFile } from '@/lib/wire/cutting-file';
import { readOrderFile } from '@/lib/wire/order-file';

const root = fileURLToPath(new URL('../../', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'slipmark-solve-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const fileOf = (name: string, content: unknown): string => {
  const file = join(scratch, name);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content, null, 1));
  return file;
};

/** Invented; Wednesday, 25 November 2026. */
const order = {
  today: '2026-11-25',
  lines: [{ key: 'axle', item: 'M8x25', quantity: 23, needBy: '2026-11-26', cars: ['3', '5'] }],
  suppliers: [
    {
      key: 'H',
      orderDays: ['Wed'],
      lead: 2,
      minimum: '4',
      freight: {
        by: 'value',
        steps: [
          { from: '0', fee: '6.50' },
          { from: '90', fee: '0' },
        ],
      },
    },
  ],
  offers: [{ key: 'h25', supplier: 'H', item: 'M8x25', pack: 50, prices: [{ packs: 1, price: '6.55' }] }],
  pins: [{ line: 'axle', quantity: 60 }],
};

const sentences = (read: ReturnType<typeof readOrderFile> | ReturnType<typeof readCuttingFile>) =>
  read.ok ? [] : read.error.map(({ line, path, sentence }) => `${String(line)} ${path}: ${sentence}`);

test('a published set is answered list by list', () => {
  const file = fileOf('set.json', {
    source: 'invented',
    instances: [
      {
        name: 'A',
        class: 'x',
        capacity: 10,
        items: [
          { length: 6, count: 2 },
          { length: 4, count: 2 },
        ],
        optimum: 2,
      },
      { name: 'B', capacity: 10, items: [{ length: 6, count: 3 }] },
    ],
  });
  const args = ['--conditions=react-server', '--import', 'tsx', 'lib/cli/main.ts', 'solve', 'cutting', file];
  const { stdout, status } = spawnSync(process.execPath, [...args, '--json', '--seconds', '5'], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(status).toBe(0);
  const said = JSON.parse(stdout) as { name: string; seconds: number }[];
  expect(said).toMatchObject([
    { name: 'A', lengths: 2, bound: 2, proved: true },
    { name: 'B', lengths: 3, bound: 3, proved: true },
  ]);
  expect(said.every(({ seconds }) => seconds > 0 && seconds < 5)).toBe(true);
});

test('an order is answered with its proof, its lateness and the cost of its pin', async () => {
  const { exit, out } = await solveOrderFile(fileOf('order.json', order), { json: true, seconds: 5 });
  expect(exit).toBe(0);
  expect(JSON.parse(out.join('\n'))).toMatchObject({
    lateCarDays: 2,
    money: '19.60',
    bound: { lateCarDays: 2, money: '19.60' },
    gap: '0.00',
    proved: true,
    packs: [{ shipment: 'H@20782', offer: 'h25', packs: 2 }],
    pins: [{ line: 'axle', money: '6.55', lateCarDays: 0, proved: true }],
  });
  const [first] = (await solveOrderFile(fileOf('order.json', order), { seconds: 5 })).out;
  expect(first).toContain('no cheaper order exists');
});

test('the README’s order, by hand: nuts at Thornby 8.90 + 6.50, bolts and washers at Brindle 14.50 + 4.10 + 4.00', async () => {
  const { exit, out } = await solveOrderFile(join(root, 'seed/example-order.yaml'), { seconds: 5 });
  expect(exit).toBe(0);
  expect(out[0]).toMatch(/^38\.00 \(freight 10\.50\), 0 late car-days; no cheaper order exists/);
  expect(out.slice(1)).toEqual([
    '  Thornby, ordered 2026-11-25, there 2026-11-27',
    '    1 × T nuts 50',
    '  Brindle, ordered 2026-11-25, there 2026-11-28',
    '    1 × B bolts',
    '    1 × B washers',
  ]);
});

test('a thread of its own gives the same answer, and can be stopped', async () => {
  const problem = readOrderFile(JSON.stringify(order));
  if (!problem.ok) throw new Error('The order can’t be read.');
  const { answer } = await solveInWorker({ kind: 'order', problem: problem.value, seconds: 5 });
  expect(answer).toEqual((await solveOrder(problem.value, 5)).answer);
  const stopped = solveInWorker({ kind: 'order', problem: problem.value, seconds: 5 }, AbortSignal.abort());
  await expect(stopped).rejects.toThrow('stopped');
});

describe('a file that can’t be used is told by line and field', () => {
  test('an order', () => {
    const [line] = order.lines;
    const wrong = JSON.stringify(
      {
        ...order,
        lines: [line, { ...line, needBy: 'soon' }],
        offers: [{ ...order.offers[0], pack: 0 }],
      },
      null,
      1,
    );
    expect(sentences(readOrderFile(wrong))).toEqual([
      expect.stringMatching(/^\d+ lines\[1\]\.needBy: .*must be a day/),
      expect.stringMatching(/^\d+ offers\[0\]\.pack: .*at least 1/),
    ]);
    const bad = { ...order, lines: [line, line], pins: [{ line: 'x', supplier: 'Y' }] };
    expect(sentences(readOrderFile(JSON.stringify(bad)))).toEqual([
      '1 lines[1].key: “axle” stands there twice. Give each a key of its own.',
      '1 pins[0].line: There is no line “x”.',
      '1 pins[0].supplier: There is no supplier “Y”.',
    ]);
    const [supplier] = order.suppliers;
    const steps = [
      { from: '5', fee: '1' },
      { from: '4', fee: '0.005' },
    ];
    const money = { ...order, suppliers: [{ ...supplier, freight: { by: 'value', steps } }] };
    expect(sentences(readOrderFile(JSON.stringify(money))).length).toBe(3);
  });

  test('a cut list', () => {
    const list = (piece: object, change: object = {}) =>
      JSON.stringify({
        kerf: '3',
        ends: '10',
        stock: [{ key: '6 m', length: '6000', price: '26.90' }],
        pieces: [{ key: 'a', length: '5990', count: 1, ...piece }],
        ...change,
      });
    expect(readCuttingFile(list({})).ok).toBe(true);
    expect(sentences(readCuttingFile(list({ length: '5990.5' })))).toEqual([
      expect.stringContaining('pieces[0].length: No stock is long enough'),
    ]);
    expect(sentences(readCuttingFile(list({ length: '12 feet' })))).toEqual([
      expect.stringContaining('“12 feet” is no length'),
    ]);
    expect(sentences(readCuttingFile(list({ cont: 1 })))).toEqual([
      expect.stringContaining('Did you mean “count”?'),
    ]);
    const inches = readCuttingFile(list({ length: '12-3/8' }, { unit: 'in', kerf: '1/8', ends: '1/2' }));
    expect(inches.ok && inches.value[0]?.problem).toMatchObject({
      scale: 8,
      kerf: 1,
      pieces: [{ length: 99 }],
    });
  });
});
