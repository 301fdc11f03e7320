import { describe, expect, test } from 'vitest';
import { lineGroups } from '@/components/board/groups';
import { railRuns } from '@/components/board/rail-runs';
import { refuse } from '@/lib/domain/base/refusals';
import { refusalLine } from '@/lib/wire/views/refusal';
import { saidLine } from '@/lib/wire/views/said-line';

describe('a rail', () => {
  const drawn = (rail: string): string =>
    railRuns(rail)
      .map(({ code, count, folded }) => `${folded ? '×' : ''}${String(count)}${code}`)
      .join(' ');

  test.each([
    ['fits', '12v 4f 8p', '12v 4f 8p'],
    ['folds the longest run first, and no more than it must', '43v 7f 28p', '×43v 7f ×28p'],
    ['never folds what someone must go to', '40v 9O 9D 9U', '×40v 9O 9D 9U'],
    ['is empty', '', ''],
  ])('%s', (_what, rail, wanted) => {
    expect(drawn(rail)).toBe(wanted);
  });
});

describe('a line of a refusal', () => {
  test('is cut before what clears it, whatever full stops a reason holds', () => {
    const hold = refuse('hold-stands', { hold: 'H-1', scope: 'gate', reason: 'papers missing. Ask Tom' });
    expect(refusalLine('A-1', hold)).toMatchObject({
      says: 'H-1 holds the car at its gate: papers missing. Ask Tom.',
      clears: 'A lead releases it.',
    });
    expect(saidLine('A-1', hold, 'One sentence only.')).toMatchObject({
      says: 'One sentence only.',
      clears: '',
    });
  });

  test('leads to the place that clears it', () => {
    const left = refuse('joint-below-level', { joint: 'J-110@L', level: 'final', wanted: 'verified' });
    expect(refusalLine('C 1', left)).toMatchObject({
      href: '/cars/C%201/joints/J-110%40L',
      act: 'Verify it',
      sign: 'final',
    });
    const full = refuse('room-full', { stage: 'WH', capacity: 1, cars: ['A-2'] }, { soft: true });
    expect(refusalLine('A-1', full).href).toBeNull();
  });

  test('stands with its kind, and none is left out', () => {
    const lines = [
      refuse('check-not-clear', { check: 'K-1', status: 'failed' }),
      refuse('wait-running', { operation: 'FR-080', until: null }),
      refuse('hold-stands', { hold: 'H-1', scope: 'work', reason: 'x' }),
    ].map((one) => refusalLine('A-1', one));
    const groups = lineGroups(lines);
    expect(groups.map(({ title }) => title)).toEqual(['Holds', 'Checks', 'Conditions, parts and waits']);
    expect(groups.flatMap((group) => group.lines)).toHaveLength(3);
  });
});
