/** Bolt lengths against the published dimensions and the hand-worked fixtures that were made from them. */
import { describe, expect, test } from 'vitest';
import {
  add,
  compare,
  exact,
  multiply,
  parseDecimal,
  parseInches,
  toDecimalText,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import {
  clearanceHole,
  mayBeShorterBy,
  nutHeight,
  threadLength,
  transitionLength,
  washerThickness,
} from '@/lib/domain/shop/fastener-table';
import type { NutPattern, Spread, WasherPattern } from '@/lib/domain/shop/fastener-table';
import { USUAL_LENGTH, judgeLength, neededLength, pickLength, shankOf } from '@/lib/domain/shop/length';
import type { Stack } from '@/lib/domain/shop/length';
import { lengthSentence, lengthWords } from '@/lib/domain/shop/length-words';
import { parseThread } from '@/lib/domain/torque/strength';
import type { Thread } from '@/lib/domain/torque/strength';

const there = <T>(value: T | null | undefined): T => {
  if (value === null || value === undefined) throw new Error('nothing there');
  return value;
};
const num = (text: string): Exact => there(parseInches(text) ?? parseDecimal(text));
const thread = (text: string): Thread => there(parseThread(text));
const text3 = (value: Exact | null | undefined): string => (value ? toDecimalText(value, 3) : '–');
const spreadText = (spread: Spread | null): string =>
  spread === null ? '–' : [spread.basic, spread.max, spread.min].map(text3).join(' ');

/** Quarter-inch catalogue from 1/2 to 4 in, as the fixtures have it. */
const QUARTERS = Array.from({ length: 15 }, (_, index) => exact(index + 2, 4));

const inchStack = (text: string, grip: string, washers: readonly WasherPattern[], nut: NutPattern): Stack => {
  const of = thread(text);
  return {
    thread: of,
    grip: num(grip),
    washers: washers.map((each) => there(washerThickness(each, of.diameter))),
    nut: there(nutHeight(nut, of.diameter)),
  };
};

describe('length selection', () => {
  // standards.md 4.6: arithmetic by hand from 4.2 to 4.4; quarter-inch catalogue, greatest nut height, N washers, 2 threads.
  test.each<[string, string, WasherPattern[], NutPattern, string, string, string, string]>([
    ['1/4-20', '0.500', ['N', 'N'], 'hex', '0.956', '1', '0.986', '1'],
    ['1/4-20', '0.500', ['N', 'N'], 'insert', '1.058', '1-1/4', '1.088', '1-1/4'],
    ['3/8-16', '1.000', ['N', 'N'], 'hex', '1.592', '1-3/4', '1.622', '1-3/4'],
    ['3/8-16', '1.000', ['N', 'N'], 'insert', '1.724', '1-3/4', '1.754', '2'],
    ['3/8-16', '1.000', ['N', 'split'], 'hex', '1.621', '1-3/4', '1.636', '1-3/4'],
    // By hand 1.6823 and 1.7123: the printed 1.682 and 1.712.
    ['3/8-24', '1.000', ['N', 'N'], 'insert', '1.682', '1-3/4', '1.712', '1-3/4'],
    // By hand 1.7795 and 1.8095: the page prints 1.780 and 1.810.
    ['3/8-16', '1.1875', ['N', 'N'], 'hex', '1.78', '2', '1.81', '2'],
    ['1/2-20', '1.500', ['N', 'N'], 'insert', '2.399', '2-1/2', '2.451', '2-1/2'],
    ['5/8-11', '2.000', ['N', 'N'], 'hex', '2.931', '3', '2.983', '3'],
  ])('%s through %s in, %s, %s nut', (of, grip, washers, nut, basic, basicPick, max, maxPick) => {
    const stack = inchStack(of, grip, washers, nut);
    for (const [policy, needed, pick] of [
      ['basic', basic, basicPick],
      ['max', max, maxPick],
    ] as const) {
      const answer = pickLength(stack, QUARTERS, { ...USUAL_LENGTH, washers: policy });
      expect(text3(answer.needed.length)).toBe(needed);
      expect(compare(there(answer.pick).length, num(pick))).toBe(0);
      // The shank clears the grip in all rows (4.6).
      expect(answer.refusals).toEqual([]);
    }
  });

  test('a bolt that is exactly long enough is long enough', () => {
    const stack = inchStack('3/8-16', '1.000', ['N', 'N'], 'hex');
    const { length } = neededLength(stack);
    expect(compare(there(pickLength(stack, [length]).pick).length, length)).toBe(0);
    const [missed] = pickLength(stack, [add(length, exact(-1, 1_000_000))]).refusals;
    expect(missed?.code).toBe('no-such-length');
  });

  test('the next length is one that the catalogue has', () => {
    const stack = inchStack('3/8-16', '1.000', ['N', 'N'], 'hex');
    const answer = pickLength(stack, [num('3'), num('1-1/2'), num('2-1/4')]);
    expect(compare(there(answer.pick).length, num('2-1/4'))).toBe(0);
  });

  test('it says each term', () => {
    expect(lengthWords(pickLength(inchStack('3/8-16', '1', ['N', 'N'], 'hex'), QUARTERS))).toBe(
      'grip 1 + 2 washers 0.16 + nut 0.337 + 2 threads 0.125 = 1.622 in. Next length in the catalogue: 1-3/4 in. 4 whole threads stand out; its shank of 0.75 has room up to 1.102.',
    );
    expect(lengthWords(pickLength(inchStack('1/4-20', '1/2', [], 'hex'), []))).toBe(
      'grip 0.5 + nut 0.226 + 2 threads 0.1 = 0.826 in. The catalogue has no such bolt; 0.826 in are needed. Add one that is long enough.',
    );
  });

  test('one thread or two, three washers or four: the shop decides', () => {
    // standards.md 4.1: sources differ between 1 and 2 threads, and between 3 and 4 washers.
    const stack = inchStack('3/8-16', '1.000', ['N', 'N', 'N', 'N'], 'hex');
    const one = neededLength(stack, { ...USUAL_LENGTH, threads: 1 });
    expect(compare(add(one.length, exact(1, 16)), neededLength(stack).length)).toBe(0);
    expect(pickLength(stack, QUARTERS).refusals.map(({ code }) => code)).toEqual(['too-many-washers']);
    expect(pickLength(stack, QUARTERS, { ...USUAL_LENGTH, mostWashers: 4 }).refusals).toEqual([]);
    // An aircraft builders' note there: at most three threads.
    const [far] = pickLength(stack, QUARTERS, { ...USUAL_LENGTH, mostWashers: 4, mostThreads: 3 }).refusals;
    expect(far?.code).toBe('stands-out-too-far');
    expect(far === undefined ? '' : lengthSentence(far)).toContain('at most 3 may');
  });

  test('a bolt may be made short: standards.md 4.4, −0.04 in for 3/8 of 1-3/4', () => {
    const stack = inchStack('3/8-16', '1.125', ['N', 'N'], 'hex');
    expect(text3(neededLength(stack).length)).toBe('1.747');
    expect(text3(pickLength(stack, QUARTERS).pick?.length)).toBe('1.75');
    expect(text3(pickLength(stack, QUARTERS, { ...USUAL_LENGTH, madeShort: true }).pick?.length)).toBe('2');
  });
});

describe('the nut must not reach the shank', () => {
  test('standards.md 4.6: 3/8-16, grip 0.50, one N washer, 1-3/4 in: shank 0.75 > 0.551', () => {
    const stack = inchStack('3/8-16', '0.50', ['N'], 'hex');
    const judged = judgeLength(stack, { length: num('1-3/4') });
    expect(text3(judged.shank)).toBe('0.75');
    expect(text3(judged.shankRoom)).toBe('0.551');
    expect(judged.refusals.map(({ code }) => code)).toEqual(['nut-reaches-shank']);
    expect(lengthSentence(there(judged.refusals[0]))).toContain('nut reaches it after 0.551');
    expect(judgeLength(stack, { length: num('1-3/4'), threadedToHead: true }).refusals).toEqual([]);
  });

  test('exactly at the washer is still clear', () => {
    const of = inchStack('3/8-16', '0.699', ['N'], 'hex');
    expect(judgeLength(of, { length: num('1-3/4') }).refusals).toEqual([]);
    const less = inchStack('3/8-16', '0.698', ['N'], 'hex');
    expect(judgeLength(less, { length: num('1-3/4') }).refusals.map(({ code }) => code)).toEqual([
      'nut-reaches-shank',
    ]);
  });

  test('a metric bolt: M10 of 40 has 26 mm of thread (the demo plan, M10x35 for M10x40)', () => {
    expect(text3(threadLength('mm', exact(10), exact(40)))).toBe('26');
    expect(text3(shankOf(thread('M10x1.5'), exact(40)))).toBe('14');
    // Not longer than its thread would be: threaded to the head.
    expect(text3(shankOf(thread('M10x1.5'), exact(20)))).toBe('0');
  });
});

describe('published dimensions', () => {
  const SIZES = ['1/4', '5/16', '3/8', '7/16', '1/2', '9/16', '5/8', '3/4'];

  // standards.md 4.2: ASME B18.2.2-2015 (MH31 p. 1677); lock nuts grade C. Size, basic, max, min; jam max, min; insert max, metal max, min of both.
  test.each([
    ['1/4', '0.219 0.226 0.212', '0.163 0.163 0.15', '0.328', '0.288', '0.212'],
    ['5/16', '0.266 0.273 0.258', '0.195 0.195 0.18', '0.359', '0.336', '0.258'],
    ['3/8', '0.328 0.337 0.32', '0.227 0.227 0.21', '0.469', '0.415', '0.32'],
    ['7/16', '0.375 0.385 0.365', '0.26 0.26 0.24', '0.524', '0.463', '0.365'],
    ['1/2', '0.438 0.448 0.427', '0.323 0.323 0.302', '0.609', '0.573', '0.427'],
    ['9/16', '0.484 0.496 0.473', '0.324 0.324 0.301', '0.656', '0.621', '0.473'],
    ['5/8', '0.547 0.559 0.535', '0.387 0.387 0.363', '0.765', '0.731', '0.535'],
    ['3/4', '0.641 0.665 0.617', '0.446 0.446 0.398', '–', '–', '–'],
  ])('nuts of %s', (size, hex, thin, insert, metal, least) => {
    const at = (pattern: NutPattern): Spread | null => nutHeight(pattern, num(size));
    expect(spreadText(at('hex'))).toBe(hex);
    expect(spreadText(at('thin'))).toBe(thin);
    expect([text3(at('insert')?.max), text3(at('all-metal')?.max)]).toEqual([insert, metal]);
    expect([text3(at('insert')?.min), text3(at('all-metal')?.min)]).toEqual([least, least]);
  });

  // standards.md 4.3: ASME B18.21.1-2009 (MH31 p. 1694), N and W: t basic, max, min; regular split lock: t min.
  test.each([
    ['1/4', '0.065 0.08 0.051', '0.065 0.08 0.051', '0.062'],
    ['5/16', '0.065 0.08 0.051', '0.083 0.104 0.064', '0.078'],
    ['3/8', '0.065 0.08 0.051', '0.083 0.104 0.064', '0.094'],
    ['7/16', '0.065 0.08 0.051', '0.083 0.104 0.064', '0.109'],
    ['1/2', '0.095 0.121 0.074', '0.109 0.132 0.086', '0.125'],
    ['9/16', '0.095 0.121 0.074', '0.109 0.132 0.086', '0.141'],
    ['5/8', '0.095 0.121 0.074', '0.134 0.16 0.108', '0.156'],
    ['3/4', '0.134 0.16 0.108', '0.148 0.177 0.122', '0.188'],
  ])('washers of %s', (size, narrow, wide, split) => {
    expect(spreadText(washerThickness('N', num(size)))).toBe(narrow);
    expect(spreadText(washerThickness('W', num(size)))).toBe(wide);
    expect(text3(washerThickness('split', num(size))?.min)).toBe(split);
  });

  // standards.md 4.4: ASME B18.2.1. LT up to 6 in, LT above, transition Y.
  test.each([
    ['1/4', '0.75', '1', '0.25'],
    ['5/16', '0.875', '1.125', '0.278'],
    ['3/8', '1', '1.25', '0.312'],
    ['7/16', '1.125', '1.375', '0.357'],
    ['1/2', '1.25', '1.5', '0.385'],
    ['9/16', '1.375', '1.625', '0.417'],
    ['5/8', '1.5', '1.75', '0.455'],
    ['3/4', '1.75', '2', '0.5'],
  ])('thread of a %s cap screw', (size, short, long, transition) => {
    const diameter = num(size);
    expect(text3(threadLength('in', diameter, exact(6)))).toBe(short);
    expect(text3(threadLength('in', diameter, num('6-1/64')))).toBe(long);
    expect(text3(transitionLength(diameter))).toBe(transition);
    // Shorter than thread and transition: threaded to the head.
    const bolt: Thread = { unit: 'in', diameter, pitch: exact(1, 20) };
    const limit = add(num(short), num(transition));
    expect(text3(shankOf(bolt, limit))).toBe(transition);
    expect(text3(shankOf(bolt, add(limit, exact(-1, 1000))))).toBe('0');
  });

  // standards.md 4.4: length tolerance, up to and with 1, 2-1/2, 4, 6, and above.
  test.each([
    [['1/4', '5/16', '3/8'], '0.03 0.04 0.06 0.1 0.18'],
    [['7/16', '1/2'], '0.03 0.06 0.08 0.1 0.18'],
    [['9/16', '5/8', '3/4'], '0.03 0.08 0.1 0.1 0.18'],
  ])('%s may be shorter', (sizes, row) => {
    for (const size of sizes)
      expect(
        ['1', '2-1/2', '4', '6', '7']
          .map((length) => text3(mayBeShorterBy(num(size), num(length))))
          .join(' '),
      ).toBe(row);
    expect(text3(mayBeShorterBy(num('3/8'), num('1-1/64')))).toBe('0.04');
  });

  // standards.md 4.5: ASME B18.2.8 (close, normal, loose); ISO 273 (fine, medium, coarse).
  test.each([
    ['1/4', '0.266 0.281 0.297'],
    ['5/16', '0.328 0.344 0.359'],
    ['3/8', '0.391 0.406 0.422'],
    ['7/16', '0.453 0.469 0.484'],
    ['1/2', '0.531 0.562 0.609'],
    ['5/8', '0.656 0.688 0.734'],
    ['3/4', '0.781 0.812 0.906'],
    ['M5', '5.3 5.5 5.8'],
    ['M6', '6.4 6.6 7'],
    ['M8', '8.4 9 10'],
    ['M10', '10.5 11 12'],
    ['M12', '13 13.5 14.5'],
    ['M14', '15 15.5 16.5'],
    ['M16', '17 17.5 18.5'],
  ])('clearance holes of %s', (size, row) => {
    const unit = size.startsWith('M') ? 'mm' : 'in';
    const holes = (['close', 'normal', 'loose'] as const).map((fit) =>
      clearanceHole(unit, num(size.replace('M', '')), fit),
    );
    expect(holes.map(text3).join(' ')).toBe(row);
  });

  test('a typing error in a table would break their order', () => {
    for (const size of SIZES.map(num)) {
      const spreads = [
        ...(['hex', 'thin', 'insert', 'all-metal'] as const).map((pattern) => nutHeight(pattern, size)),
        ...(['N', 'W', 'split'] as const).map((pattern) => washerThickness(pattern, size)),
      ];
      for (const spread of spreads)
        if (spread !== null)
          expect([compare(spread.min, spread.basic), compare(spread.basic, spread.max)]).not.toContain(1);
      const [thin, hex] = [nutHeight('thin', size), nutHeight('hex', size)];
      expect(compare(there(thin).max, there(hex).min)).toBe(-1);
      // A hex nut is about seven eighths as high as its bolt is thick.
      expect(compare(there(hex).basic, multiply(size, exact(8, 10)))).toBe(1);
      expect(compare(there(hex).basic, multiply(size, exact(9, 10)))).toBe(-1);
    }
  });
});
