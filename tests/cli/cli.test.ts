import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { checkPlanFile } from '@/lib/cli/check-plan';
import { PLAIN_INK, inkFor } from '@/lib/cli/ink';
import { replay } from '@/lib/cli/replay';
import type { ReplayOptions } from '@/lib/cli/replay';

const root = fileURLToPath(new URL('../../', import.meta.url));
const plan = join(root, 'seed/example-plan.yaml');
const day = join(root, 'seed/example-day.jsonl');
const scratch = mkdtempSync(join(tmpdir(), 'slipmark-cli-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const fileOf = (name: string, text: string): string => {
  const file = join(scratch, name);
  writeFileSync(file, text);
  return file;
};

/** A real run costs over half a second: what needs no process of its own is called below it. */
const run = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'lib/cli/main.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
  });

const played = (lines: string, options: Partial<ReplayOptions> = {}) =>
  replay(plan, lines, { zone: 'UTC', ...options }, PLAIN_INK);

const dayLines = readFileSync(day, 'utf8').split('\n');
/** The day up to the line on which this text stands, and more lines behind it. */
const dayUpTo = (text: string, ...more: readonly object[]): string => {
  const end = dayLines.findIndex((line) => line.includes(text)) + 1;
  return fileOf(
    'day.jsonl',
    [...dayLines.slice(0, end), ...more.map((each) => JSON.stringify(each))].join('\n'),
  );
};

describe('as a program', () => {
  test('plan schema prints a JSON Schema', () => {
    const { status, stdout } = run('plan', 'schema');
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ title: 'Slipmark build plan', type: 'object' });
  });

  test('replay of the example turns out as it says', () => {
    const { status, stdout, stderr } = run('replay', plan, day);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('29 lines: 24 accepted, 5 refused, all as expected');
    expect(stdout).not.toContain('\u001b');
  });

  test('an unknown command gets a suggestion and ends with 2', () => {
    const { status, stdout, stderr } = run('replya');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('Did you mean replay?');
  });

  test('lines that can’t be read end with 2 and name the line', () => {
    const bad = fileOf('bad.jsonl', '# a comment\n{"now":"08:00"\n');
    const { status, stdout, stderr } = run('replay', plan, bad);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('bad.jsonl:2: This can’t be read as JSON');
  });

  test('help ends with 0', () => {
    expect(run('replay', '--help').status).toBe(0);
  });
});

describe('plan check', () => {
  test('a good plan', () => {
    expect(checkPlanFile(plan, {}, PLAIN_INK)).toEqual({
      exit: 0,
      out: ['2 stages, 3 operations, 2 joints, 1 check; 0 errors, 0 gaps, 0 hints'],
    });
  });

  test('joints are counted with their positions; gaps and hints don’t fail', () => {
    const { exit, out } = checkPlanFile(join(root, 'seed/corbel-54.yaml'), {}, PLAIN_INK);
    expect(exit).toBe(0);
    expect(out.at(-1)).toMatch(
      /^10 stages, \d+ operations, \d+ joints \(\d+ with their positions\), .*; 0 errors/,
    );
  });

  test('an error stands at its place, in text and as JSON', () => {
    const bad = fileOf('bad.yaml', 'plan: P\nrevision: r1\nstages:\n  A: { name: First, capacty: 1 }\n');
    const text = checkPlanFile(bad, {}, PLAIN_INK);
    expect(text.exit).toBe(1);
    expect(text.out[0]).toMatch(
      /bad\.yaml:4:21: error: There is no field “capacty” here\. Did you mean “capacity”\?/,
    );
    expect(text.out.at(-1)).toContain('1 error,');
    const json = checkPlanFile(bad, { json: true }, PLAIN_INK);
    expect(JSON.parse(json.out.join('\n'))).toMatchObject({
      counts: { errors: 1 },
      problems: [{ line: 4, column: 21, rank: 'error', code: 'unknown-field' }],
    });
  });

  test('a file that is not there, or no text', () => {
    expect(checkPlanFile(join(scratch, 'none.yaml'), {}, PLAIN_INK)).toMatchObject({
      exit: 2,
      problems: [expect.stringMatching(/none\.yaml can’t be read: there is no such file\.$/)],
    });
    const file = join(scratch, 'latin1.yaml');
    writeFileSync(file, Buffer.from([0x70, 0xe9]));
    expect(checkPlanFile(file, {}, PLAIN_INK)).toMatchObject({
      exit: 2,
      problems: [expect.stringContaining('UTF-8')],
    });
  });
});

describe('replay', () => {
  test('a refusal says why, and what clears it', () => {
    const { out } = played(day);
    expect(out).toContainEqual(expect.stringMatching(/^ +15 {2}08:20 {2}tom +T1 final-joint J-2 +no$/));
    expect(out).toContainEqual(
      expect.stringMatching(/^ +tool-out-of-calibration {2}W-2 is not in calibration on 2026-11-25/),
    );
    expect(out).toContainEqual(expect.stringMatching(/^ +→ J-1 in doubt: J-2 was opened/));
  });

  test('half way, the assessment says what keeps the gate closed and what is waited for', () => {
    const { exit, out } = played(dayUpTo('"to":"RO"'));
    const after = out.slice(out.findIndex((line) => line.startsWith('T1, chassis')));
    expect(exit).toBe(0);
    expect(after[1]).toBe('  Gate to Rolling (RO): closed by 4 things');
    expect(after).toContain('    verify axle clamps to frame (J-2)');
    expect(after).toContainEqual(
      expect.stringMatching(/^ {6}waits: Axle clamps to frame \(J-2\) .* must be verified/),
    );
    expect(after).toContain('  Waiting for a later gate: 1 job');
  });

  test('--quiet leaves the refusals and the end; --car one car', () => {
    const quiet = played(day, { quiet: true }).out;
    expect(quiet.some((line) => line.endsWith('yes'))).toBe(false);
    expect(quiet).toContainEqual(expect.stringContaining('not-independent'));
    const one = played(day, { car: 'T1' }).out;
    expect(one.some((line) => line.includes('add-tool'))).toBe(false);
    expect(played(day, { car: 'T2' })).toMatchObject({
      exit: 2,
      problems: [expect.stringContaining('“T1”')],
    });
  });

  test('--json is one document with codes, details and sentences', () => {
    const document: unknown = JSON.parse(played(day, { json: true }).out.join('\n'));
    expect(document).toMatchObject({
      counts: { lines: 29, accepted: 24, refused: 5, unexpected: [] },
      cars: [{ car: 'T1', delivered: true, looseEnds: [] }],
    });
    expect(document).toHaveProperty('lines[9].refusals[0]', {
      code: 'tool-out-of-calibration',
      details: { tool: 'W-2', due: '2026-10-31', day: '2026-11-25' },
      soft: false,
      sentence: expect.stringContaining('Take another tool') as unknown,
      under: [],
    });
  });

  test('a refusal nobody expected ends with 1, and so does a yes in its place', () => {
    const deliver = { now: '08:00', by: 'ida', command: { type: 'deliver-car', car: 'T1' } };
    const hold = { type: 'place-hold', car: 'T1', scope: 'gate', reason: 'paint' };
    const held = { now: '08:00', by: 'tom', command: hold, expect: 'no' };
    const wrong = { ...deliver, expect: ['not-allowed'] };
    const { exit, out } = played(dayUpTo('start-car', deliver, held, wrong, { ...deliver, expect: 'no' }), {
      quiet: true,
    });
    expect(exit).toBe(1);
    expect(out.filter((line) => line.includes('←'))).toEqual([
      expect.stringMatching(/deliver-car +no {2}← expected yes$/),
      expect.stringMatching(/place-hold gate +yes {2}← expected no$/),
      expect.stringMatching(/deliver-car +no {2}← expected no: not-allowed$/),
    ]);
    expect(out.at(-1)).toMatch(/not as expected: line 10, 11, 12$/);
  });

  test('the same command twice is done once; its id for another is refused', () => {
    const command = { type: 'place-hold', car: 'T1', scope: 'gate', reason: 'paint', id: 'h' };
    const twice = { now: '08:00', by: 'tom', command };
    const other = {
      ...twice,
      now: '08:05',
      command: { ...command, reason: 'rust' },
      expect: ['id-used-for-other-command'],
    };
    const { exit, out } = played(dayUpTo('start-car', twice, { ...twice, now: '08:05' }, other));
    expect(exit).toBe(0);
    expect(out).toContainEqual(expect.stringMatching(/yes {2}already done, answered as on line 10$/));
    expect(out).toContainEqual(expect.stringContaining('The id “h” belongs to another command, on line 10.'));
    expect(out.filter((line) => line.includes('H-'))).toHaveLength(2); // the gate's list and the loose end
  });

  test('a plan with errors is not played', () => {
    const bad = fileOf('bad.yaml', 'plan: P\n');
    const { exit, out, problems } = replay(bad, day, { zone: 'UTC' }, PLAIN_INK);
    expect({ exit, out }).toEqual({ exit: 1, out: [] });
    expect(problems?.at(-1)).toBe('Nothing is played on a plan that has errors.');
  });

  test('an unknown zone, and lines of nothing but remarks', () => {
    expect(played(day, { zone: 'Mars' })).toMatchObject({
      exit: 2,
      problems: [expect.stringContaining('“Mars”')],
    });
    expect(played(fileOf('empty.jsonl', '# nothing\n'))).toMatchObject({ exit: 2 });
  });

  test('a check that fails by its own value is seen under the yes', () => {
    const bad = {
      now: '09:36',
      by: 'tom',
      command: { type: 'pass-check', car: 'T1', check: 'K-1', values: { 'drift over 5 m': '50' } },
    };
    const { out } = played(
      dayUpTo('final-joint","car":"T1","joint":"J-1","tool":"W-1","setting":"60"}}', bad),
    );
    expect(out).toContainEqual(expect.stringMatching(/→ K-1 FAILED: drift over 5 m 50 is outside/));
    expect(out).toContainEqual(expect.stringMatching(/→ finding F-1 on K-1/));
  });
});

describe('colour', () => {
  test('only where a person looks and wants it', () => {
    expect(inkFor({ isTTY: true }, undefined).bad('no')).toContain('\u001b[31m');
    expect(inkFor({ isTTY: true }, '1').bad('no')).toBe('no');
    expect(inkFor({}, undefined).bad('no')).toBe('no');
  });
});
