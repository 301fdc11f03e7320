import { describe, expect, test } from 'vitest';
import { followed } from '@/components/board/followed';
import type { Hanging } from '@/components/board/use-moves';
import type { BoardCar } from '@/lib/wire/views/board';
import type { RefusalLine } from '@/lib/wire/views/said-line';

const line = (code: RefusalLine['code'], says: string): RefusalLine => ({
  code,
  sign: 'due',
  says,
  clears: '',
  href: null,
  act: null,
});
const HOLD = line('hold-stands', 'H-1 stands');
const TIE = line('stopgap-in-place', 'a tie is in');
const RULE = line('one-stage-at-a-time', 'one stage at a time');

const car = (...gate: readonly RefusalLine[]): BoardCar => ({
  id: 'A',
  chassis: 'A',
  colour: null,
  model: 'Short',
  revision: 'r1',
  version: 1,
  stage: 0,
  crew: [],
  given: [],
  loose: 0,
  hold: null,
  way: [],
  gate,
});
const hung = (lines: readonly RefusalLine[], gate: readonly RefusalLine[]): Hanging => ({
  car: 'A',
  stage: 0,
  title: 'A stays in First',
  says: 'Two things to clear before gate 1.',
  lines,
  gate,
  isRefusal: true,
  again: null,
  opener: null,
});

describe('a list that hangs from a gate post', () => {
  test('stays as it is while nothing of the gate changes, also where the answer was newer than the board', () => {
    const same = hung([HOLD, TIE], [HOLD, TIE]);
    expect(followed(same, car(HOLD, TIE))).toBe(same);
    const newer = hung([HOLD, TIE], [HOLD]);
    expect(followed(newer, car(HOLD))).toBe(newer);
  });

  test('says that it changed, and shows what holds the gate now', () => {
    const now = followed(hung([HOLD, TIE], [HOLD, TIE]), car(HOLD));
    expect(now.lines).toEqual([HOLD]);
    expect(now.says).toBe('Changed since: one thing to clear now before gate 1.');
    expect(now.isRefusal).toBe(true);
  });

  test('keeps what was said of the move itself', () => {
    expect(followed(hung([RULE, HOLD, TIE], [HOLD, TIE]), car(TIE)).lines).toEqual([RULE, TIE]);
  });

  test('and once nothing is left it says so, and refuses no more', () => {
    const now = followed(hung([HOLD], [HOLD]), car());
    expect(now).toMatchObject({ lines: [], isRefusal: false });
    expect(now.says).toBe('Changed since: nothing holds gate 1 closed now.');
  });

  test('a question without an answer has no list to follow', () => {
    const asked = { ...hung([], [HOLD]), again: () => undefined };
    expect(followed(asked, car())).toBe(asked);
  });
});
