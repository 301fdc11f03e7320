/** `slipmark need`, called below its process: what it prints, and what it says of files and arguments that won't do. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PLAIN_INK } from '@/lib/cli/ink';
import { need } from '@/lib/cli/need';
import type { NeedOptions } from '@/lib/cli/need';

const folder = mkdtempSync(join(tmpdir(), 'slipmark-need-'));
const fileOf = (name: string, text: string): string => {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
};

const plan = fileOf(
  'plan.yaml',
  `plan: Trolley
revision: r1
stages: { S1: { name: All of it } }
operations:
  O-1: { name: Bolt it, stage: S1, minutes: 500, body: [final J-1] }
  O-2: { name: Bolt the rest, stage: S1, needs: [O-1], body: [final J-2@L, final J-2@R] }
joints:
  J-1: { name: axle to frame, fasteners: 2, method: firm, torque: no value published, firmMeans: no gap, hardware: { nut: 2 } }
  J-2: { name: wheel, repeat: sides, fasteners: 1, method: firm, torque: no value published, firmMeans: no gap, hardware: { nut: 1 } }
items:
  nut: { name: nut M8 class 8, reuse: once final, trace: lot }
`,
);
const line = (command: object, by = 'ada'): string =>
  JSON.stringify({ now: '2026-11-25T08:00', by, command });
const lines = fileOf(
  'lines.jsonl',
  [
    line({ type: 'add-person', person: 'ada', name: 'Ada', roles: ['owner', 'lead', 'technician'] }),
    line({ type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 3 }),
    line({ type: 'start-car', car: 'T1', chassis: 'T-001' }),
  ].join('\n'),
);

const asked = (options: Partial<NeedOptions> = {}): ReturnType<typeof need> =>
  need(plan, lines, { zone: 'UTC', minutes: '420', ...options }, PLAIN_INK);

describe('need', () => {
  test('says what is needed, why, by when, and what covers it', () => {
    expect(asked()).toEqual({
      exit: 0,
      out: [
        'nut nut M8 class 8: 4 needed, buy 1 by 2026-11-26',
        '  2 for T-001, axle to frame (J-1), planned, by 2026-11-25',
        '  2 for T-001, wheel (J-2@L R), planned, by 2026-11-26',
        '  covered: 3 from lot L-1',
        '',
        expect.stringContaining('until there is a schedule'),
      ],
    });
  });

  test('more minutes a day bring it nearer', () => {
    expect(asked({ minutes: '600' }).out[0]).toContain('buy 1 by 2026-11-25');
  });

  test('as data, quantities are exact text', () => {
    const [text = ''] = asked({ json: true }).out;
    expect(JSON.parse(text)).toMatchObject({
      today: '2026-11-25',
      items: [{ item: 'nut', need: '4', buy: '1', short: [{ car: 'T1', by: '2026-11-26', quantity: '1' }] }],
    });
  });

  test.each([
    [{ minutes: 'many' }, '“many” is no number of minutes.'],
    [{ minutes: '0' }, '“0” is no number of minutes.'],
    [{ zone: 'Quernmill' }, 'is no time zone'],
  ])('%j is told', (options, said) => {
    const { exit, problems } = asked(options);
    expect(exit).toBe(2);
    expect(problems?.join()).toContain(said);
  });

  test('a file that is not there is told', () => {
    expect(need(plan, 'nowhere', { zone: 'UTC', minutes: '420' }, PLAIN_INK).exit).toBe(2);
  });
});
