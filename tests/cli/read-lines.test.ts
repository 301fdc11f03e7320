import { describe, expect, test } from 'vitest';
import { readLines } from '@/lib/wire/read-lines';
import { readInstant, shopDay, shopTime } from '@/lib/wire/shop-day';

const options = { zone: 'Europe/Rome', plan: 'hash-of-the-plan' };
const read = (...lines: readonly unknown[]) =>
  readLines(
    lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n'),
    options,
  );
const problems = (...lines: readonly unknown[]): string[] => {
  const result = read(...lines);
  return result.ok ? [] : result.error.map(({ line, path, sentence }) => `${line} ${path}: ${sentence}`);
};
const open = { type: 'open-joint', car: 'C1', joint: 'J-1@L' };
const first = { now: '2026-11-25T08:00', by: 'mara', command: open };

describe('lines that can be read', () => {
  test('what is left out is filled in', () => {
    expect(read('# the day', '', first, '  // later', { ...first, now: '08:15' })).toEqual({
      ok: true,
      value: [
        {
          number: 3,
          line: {
            now: '2026-11-25T07:00:00.000Z',
            by: 'mara',
            command: { id: 'line-3', doneAt: '2026-11-25T07:00:00.000Z', claim: open },
          },
          expect: 'yes',
          body: '{"by":"mara","command":{"car":"C1","joint":"J-1@L","type":"open-joint"}}',
        },
        expect.objectContaining({
          number: 5,
          line: {
            now: '2026-11-25T07:15:00.000Z',
            by: 'mara',
            command: { id: 'line-5', doneAt: '2026-11-25T07:15:00.000Z', claim: open },
          },
        }),
      ],
    });
  });

  test('what is given is kept', () => {
    const override = { code: 'room-full', reason: 'one night' };
    const claim = { type: 'advance-car', car: 'C1', to: 'AX' };
    const result = read({ ...first, expect: ['room-full'], command: { ...claim, id: 'a1', override } });
    expect(result.ok ? result.value[0] : result.error).toMatchObject({
      line: { command: { id: 'a1', override, claim } },
      expect: ['room-full'],
    });
  });

  test('a time of day stands for the day of the line, also when it was done', () => {
    const command = { ...open, id: 'a1', doneAt: '07:55', retryOf: 'a0', batch: 'b' };
    const result = read(first, { now: '08:05', by: 'tom', device: 'd', lastContact: '07:50', command });
    expect(result.ok ? result.value[1]?.line : result.error).toEqual({
      now: '2026-11-25T07:05:00.000Z',
      by: 'tom',
      device: 'd',
      lastContact: '2026-11-25T06:50:00.000Z',
      command: { id: 'a1', doneAt: '2026-11-25T06:55:00.000Z', retryOf: 'a0', batch: 'b', claim: open },
    });
  });

  test('a car is begun on the plan that is played', () => {
    const result = read({ ...first, command: { type: 'start-car', car: 'C1', chassis: '17' } });
    expect(result.ok ? result.value[0]?.line.command.claim : result.error).toMatchObject({
      plan: options.plan,
    });
  });

  test('line ends of Windows and a byte order mark do no harm', () => {
    const result = readLines(`\uFEFF${JSON.stringify(first)}\r\n\r\n`, options);
    expect(result.ok).toBe(true);
  });
});

describe('lines that can’t', () => {
  test('every fault is told at once, with its line and field', () => {
    const { by, command } = first;
    expect(
      problems(
        first,
        { by, now: '09:00', command: { type: 'opn-joint' } },
        { by, now: '09:00', command: { type: 'open-joint', car: 'C1', jont: 'J' } },
        { by, now: '09:00', comand: command },
        '{"now":"09:00"',
        '[1]',
        { by, now: '09:00', command: { ...command, reason: '\ud83d' } },
      ),
    ).toEqual([
      '2 command.type: There is no command “opn-joint”. Did you mean “open-joint”?',
      '3 command.joint: “joint” is missing. Add it: a text.',
      expect.stringMatching(/^3 command\.jont: There is no field “jont” here\. Did you mean “joint”\?/),
      '4 command: “command” is missing. Add it: fields under it.',
      expect.stringMatching(/^4 comand: .*Did you mean “command”\?/),
      expect.stringMatching(/^5 : This can’t be read as JSON/),
      expect.stringMatching(/^6 : A line is an object in braces/),
      '7 : “command.reason” holds half a surrogate pair.',
    ]);
  });

  test('time that runs backwards', () => {
    expect(problems(first, { ...first, now: '07:59' })).toEqual([
      '2 now: “07:59” is before “2026-11-25T08:00” of an earlier line: time runs backwards. Lines stand in the order the shop heard them.',
    ]);
  });

  test('a first time without a day is told once', () => {
    expect(problems({ ...first, now: '08:00' }, { ...first, now: '08:01' })).toEqual([
      expect.stringMatching(/^1 now: “08:00” names no day/),
    ]);
  });

  test('times that are none', () => {
    const command = { ...open, doneAt: 'noon' };
    expect(
      problems(first, { ...first, now: '25:00', lastContact: 'x', command }).map(
        (each) => each.split(':')[0],
      ),
    ).toEqual(['2 now', '2 lastContact', '2 command.doneAt']);
  });

  test('a name that stands on every object', () => {
    expect(problems({ ...first, by: 'constructor' })).toHaveLength(1);
  });
});

describe('the clock of the shop', () => {
  const instant = readInstant('Europe/Rome');

  test.each([
    ['winter', '2026-11-25T08:00', '2026-11-25T07:00:00.000Z'],
    ['summer', '2026-07-01T08:00:30', '2026-07-01T06:00:30.000Z'],
    ['with Z', '2026-11-25T08:00Z', '2026-11-25T08:00:00.000Z'],
    ['with an offset', '2026-11-25 08:00:00.5-05:30', '2026-11-25T13:30:00.500Z'],
    ['a time that is skipped is read by the clock before', '2026-03-29T02:30', '2026-03-29T01:30:00.000Z'],
    ['just before and after the skipped hour', '2026-03-29T01:59', '2026-03-29T00:59:00.000Z'],
    ['', '2026-03-29T03:00', '2026-03-29T01:00:00.000Z'],
    ['of a time that comes twice, the first', '2026-10-25T02:30', '2026-10-25T00:30:00.000Z'],
    ['after it', '2026-10-25T03:00', '2026-10-25T02:00:00.000Z'],
    ['no such day', '2026-02-30T08:00', null],
    ['no such time', '2026-02-28T24:00', null],
    ['a day alone', '2026-02-28', null],
  ])('%s: %s', (_, text, at) => {
    expect(instant(text)).toBe(at);
  });

  test('a day begins at the shop’s midnight', () => {
    expect(shopDay('Europe/Rome')('2026-11-24T23:00:00.000Z')).toBe('2026-11-25');
    expect(shopDay('UTC')('2026-11-24T23:00:00.000Z')).toBe('2026-11-24');
    expect(shopTime('Europe/Rome')('2026-11-24T23:00:00.000Z')).toBe('00:00');
  });

  test('what it shows is what it reads', () => {
    const zones = ['UTC', 'Europe/Rome', 'Asia/Kathmandu', 'America/St_Johns', 'Pacific/Chatham'];
    for (const zone of zones) {
      const at = '2026-06-15T10:23:00.000Z';
      expect(readInstant(zone)(`${shopDay(zone)(at)}T${shopTime(zone)(at)}`)).toBe(at);
    }
  });
});
