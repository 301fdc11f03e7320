/** What the floor shows on a morning, car by car: where each stands, what is loose on it, and why. */
import { describe, expect, test } from 'vitest';
import type { Assessment } from '@/lib/domain/assess';
import { doubtsOf } from '@/lib/domain/car/joint';
import { factsAt } from '@/lib/domain/play';
import { assessAt, demoOn } from '@/tests/support/demo';

const TODAY = '2026-11-25';
const { lines, world, stage } = demoOn(TODAY);
const now = lines.at(-1)?.now ?? '';

const seen = (car: string): Assessment => assessAt(stage, world, { car, by: 'mara', now });

/** Loose ends, but for joints that only wait for a later stage. */
const loose = (car: string): readonly string[] => {
  const { looseEnds } = seen(car);
  return looseEnds.filter(({ kind }) => kind !== 'joint').map(({ kind, key }) => `${kind} ${key}`);
};
const claims = (car: string, type: string): typeof lines =>
  lines.filter(
    ({ refused, command: { claim } }) =>
      refused === undefined && claim.type === type && 'car' in claim && claim.car === car,
  );
const rowOf = (car: string): NonNullable<(typeof world.cars)[string]> => {
  const row = world.cars[car];
  if (row === undefined) throw new Error(`no ${car}`);
  return row;
};

test('six cars on two plans, each in its colour, in rooms that none has more of than there is room', () => {
  const cars = Object.values(world.cars).map(({ id, colour }) => [id, colour, seen(id).stage]);
  expect(cars.toSorted()).toEqual([
    ['C54-011', 'oxblood', 'PR'],
    ['C54-012', 'bottle', 'ST'],
    ['C54-013', 'pewter', 'EN'],
    ['C54-014', 'cream', 'LN'],
    ['C54-015', 'slate', 'AX'],
    ['LGT-001', 'primer', 'FR'],
  ]);
  expect(new Set(Object.values(world.cars).map(({ plan }) => plan)).size).toBe(2);
  expect(lines.filter(({ command }) => command.override !== undefined)).toEqual([]);
});

describe('C54-011', () => {
  const car = 'C54-011';

  test('a wrench came back nine percent high: what has no room for it is in doubt, the rest clears itself', () => {
    expect(loose(car)).toEqual([
      ...['J-120@L', 'J-120@R', 'J-121@L', 'J-121@R', 'J-509@L', 'J-509@R', 'J-510', 'J-702@2'].map(
        (joint) => `doubt ${joint}`,
      ),
      'operation PR-040',
    ]);
    const line = {
      now,
      by: 'mara',
      command: { id: '', doneAt: now, claim: { type: 'deliver-car', car } },
    } as const;
    const facts = factsAt(world, stage, line);
    for (const joint of ['J-117@L', 'J-117@R', 'J-220@L', 'J-220@R']) {
      const row = rowOf(car).joints[joint];
      expect([joint, row?.marks.some(({ tool }) => tool === 'T-14')]).toEqual([joint, true]);
      expect([joint, doubtsOf(row, facts)]).toEqual([joint, []]);
    }
  });

  test('a stud pulled too far is stored as it was read, renewed, and closed', () => {
    const told = claims(car, 'report-over-torque').map(({ command: { claim } }) => claim);
    expect(told).toMatchObject([{ joint: 'J-230@FL', fastener: 3, reading: '74', unit: 'lbf·ft' }]);
    expect(rowOf(car).joints['J-230@FL']).toMatchObject({ level: 'verified', cycle: 2, doubts: [] });
    expect(Object.values(rowOf(car).findings).map(({ state }) => state)).toEqual([
      'closed',
      'closed',
      'closed',
    ]);
  });

  test('a look came in late from a second tablet, and counts from when it was done', () => {
    const late = lines.filter(({ device }) => device !== undefined);
    expect(late.map(({ device, command: { claim } }) => [device, claim.type])).toEqual([
      ['tablet-2', 'verify-joint'],
    ]);
    const mark = rowOf(car).joints['J-230@FL']?.marks.findLast(({ level }) => level === 'verified');
    expect(mark?.at).toBe(late[0]?.command.doneAt);
    expect(late[0]?.command.doneAt).not.toBe(late[0]?.now);
  });
});

describe('C54-012', () => {
  test('is as it was: opened and its neighbour in doubt, snug only, a check failed, a wrap in, a hold', () => {
    expect(loose('C54-012')).toEqual([
      'hold H-1',
      'finding F-1',
      'doubt J-512',
      'check K-52',
      'stopgap G-04',
      'stopgap G-05',
      'stopgap G-07',
      'stopgap G-tap-1',
    ]);
    const ends = seen('C54-012').looseEnds.filter(({ key }) => key === 'J-110@L');
    expect(ends.map(({ refusal }) => refusal.code)).toEqual(['joint-below-level']);
    expect(rowOf('C54-012').joints['J-110@L']?.level).toBe('snug');
    expect(rowOf('C54-012').conditions['weight']?.value ?? false).toBe(false);
  });

  test('has a starter that another car is owed', () => {
    expect(rowOf('C54-015').parts['P-11']).toMatchObject({ state: 'taken', takenFor: 'C54-013' });
    expect(rowOf('C54-012').parts['P-11']?.state).toBe('fitted');
    expect((rowOf('C54-015').parts['P-11']?.at ?? '') < (rowOf('C54-012').parts['P-11']?.at ?? '')).toBe(
      true,
    );
  });
});

describe('C54-013', () => {
  const car = 'C54-013';

  test('its head was left half way through the angle, and the note says what to do', () => {
    const row = rowOf(car).operations['EN-010'];
    expect(row?.status).toBe('paused');
    expect(row?.leftAs).toMatch(/bolt 6 of 10.*ten new/);
    expect(rowOf(car).joints['J-501']?.level ?? 'open').toBe('open');
    expect(loose(car)).toContain('finding F-1');
  });

  test('a wrap stands that should have been out by a gate behind it', () => {
    const wrap = rowOf(car).stopgaps['G-tap-1'];
    expect(wrap?.removed).toBe(0);
    expect(wrap?.outBy).toBeLessThan(rowOf(car).stage);
  });
});

describe('C54-014', () => {
  const car = 'C54-014';

  test('six of its ten tube nuts are of a lot that is kept apart', () => {
    const doubted = loose(car).filter((end) => end.startsWith('doubt'));
    expect(doubted).toEqual([5, 6, 7, 8, 9, 10].map((each) => `doubt J-310@${String(each)}`));
    const apart = Object.values(world.shop.lots).filter(({ quarantined }) => quarantined !== null);
    expect(apart.map(({ id }) => id)).toEqual(['L-0933', 'L-0941']);
  });

  test('its tank failed and is lined: three days of waiting keep it from its test', () => {
    expect(rowOf(car).checks['K-36']?.status).toBe('failed');
    expect(rowOf(car).findings['F-1']).toMatchObject({ state: 'decided', disposition: 'rework' });
    const { jobs } = seen(car);
    const test = jobs.find(({ kind, key }) => kind === 'operation' && key === 'LN-060');
    const wait = test?.waitsFor.find(({ code }) => code === 'wait-running');
    const until = wait?.code === 'wait-running' ? wait.details.until : null;
    expect(Date.parse(until ?? '') - Date.parse(now)).toBeGreaterThan(40 * 3_600_000);
    expect(rowOf(car).joints['J-401']?.level ?? 'open').toBe('open');
  });

  test('a cracked strap is to be replaced, and its drilling is due again', () => {
    expect(rowOf(car).operations['LN-050']).toMatchObject({ status: 'due-again', run: 2 });
    expect(loose(car)).toContain('part tank-strap');
  });
});

describe('C54-015', () => {
  const car = 'C54-015';

  test('its axle was left half built and taken over; its front is in work; a joint waits for a second person', () => {
    expect(claims(car, 'take-over-operation').map(({ by }) => by)).toEqual(['oswin']);
    const row = rowOf(car);
    expect(row.operations['AX-020']).toMatchObject({ status: 'paused', crew: ['tobit', 'oswin'] });
    expect(row.operations['AX-080']).toMatchObject({ status: 'running', present: ['tobit'] });
    const looks = seen(car).jobs.filter(({ kind }) => kind === 'verify');
    expect(looks.map(({ key }) => key)).toContain('J-203@R');
  });

  test('a check failed behind it, and the lead has yet to decide', () => {
    expect(rowOf(car).checks['K-04@R']?.status).toBe('failed');
    expect(loose(car)).toContain('finding F-1');
    expect(rowOf(car).findings['F-1']?.state).toBe('undecided');
  });

  test('a snug was struck by who signed it, and made again', () => {
    const struck = Object.values(rowOf(car).signatures).filter((each) => each.struck !== null);
    expect(struck).toMatchObject([{ by: 'tobit', act: 'snug-joint', subject: 'J-202@R' }]);
    expect(rowOf(car).joints['J-202@R']?.level).toBe('snug');
  });
});

describe('LGT-001', () => {
  const car = 'LGT-001';

  test('stands in the jig, tacked and four millimetres out, and may not be welded', () => {
    expect(rowOf(car).conditions['on-jig']?.value).toBe(true);
    expect(rowOf(car).checks['K-16']?.status).toBe('failed');
    const weld = seen(car).jobs.find(({ key }) => key === 'FR-030');
    expect(weld?.state).toBe('waiting');
    expect(weld?.waitsFor.map(({ code }) => code)).toContain('check-not-clear');
  });

  test('is the only car in the jig', () => {
    const inJig = Object.values(world.cars).filter(({ conditions }) => conditions['on-jig']?.value === true);
    expect(inJig.map(({ id }) => id)).toEqual([car]);
  });
});

describe('across the shop', () => {
  test('stages and jobs are given to people by name', () => {
    const given = Object.values(world.cars).flatMap(({ id }) =>
      claims(id, 'assign').flatMap(({ command: { claim } }) =>
        claim.type === 'assign' && !claim.job.startsWith('stage:') ? [[id, claim.job]] : [],
      ),
    );
    expect(given).toEqual([
      ['C54-013', 'operation:EN-010:1'],
      ['C54-014', 'operation:LN-050:2'],
      ['C54-015', 'operation:AX-030:1'],
      ['C54-015', 'operation:AX-080:1'],
      ['LGT-001', 'operation:FR-020:1'],
    ]);
    for (const { id } of Object.values(world.cars)) expect(claims(id, 'assign').length).toBeGreaterThan(0);
  });

  test('four people are at work, on three cars', () => {
    const at = Object.values(world.cars).flatMap(({ id, operations }) =>
      Object.values(operations).flatMap(({ status, present }) =>
        status === 'running' ? present.map((person) => `${person} ${id}`) : [],
      ),
    );
    expect(at.toSorted()).toEqual(['ines C54-011', 'mara LGT-001', 'oswin LGT-001', 'tobit C54-015']);
  });

  test('one paper of one person runs out in two days', () => {
    const ends = Object.values(world.shop.people).flatMap(({ id, qualifications }) =>
      qualifications.flatMap(({ key, until }) => (until === undefined ? [] : [[id, key, until]])),
    );
    expect(ends).toEqual([['oswin', 'axle', '2026-11-27']]);
  });
});
