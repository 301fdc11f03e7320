import { describe, expect, test } from 'vitest';
import {
  optionsOf,
  parseBodyLine,
  parseDuration,
  parseNeed,
  parseReference,
  parseReuse,
  parseWhen,
} from '@/lib/domain/plan/notation';

describe('a reference', () => {
  test.each([
    ['J-110', { key: 'J-110', position: null }],
    [' J-110@L ', { key: 'J-110', position: 'L' }],
    ['J-110@*', { key: 'J-110', position: '*' }],
    ['bolt.m8_a@12', { key: 'bolt.m8_a', position: '12' }],
  ])('%s', (text, wanted) => {
    expect(parseReference(text)).toEqual(wanted);
  });

  test.each(['', '8-J', 'J 110', 'J-110@', 'J-110@L@R', '@L', 'J-110@**'])('is not “%s”', (text) => {
    expect(parseReference(text)).toBeNull();
  });
});

describe('a need', () => {
  const ref = (key: string, position: string | null = null) => ({ key, position });
  test.each([
    ['FR-010', { kind: 'bare', ref: ref('FR-010') }],
    ['K-16@L', { kind: 'bare', ref: ref('K-16', 'L') }],
    ['J-110 snug', { kind: 'joint', ref: ref('J-110'), level: 'snug' }],
    ['J-110@*  final', { kind: 'joint', ref: ref('J-110', '*'), level: 'final' }],
    ['J-110 verified', { kind: 'joint', ref: ref('J-110'), level: 'verified' }],
    ['G-05 out', { kind: 'stopgap-out', ref: ref('G-05') }],
    ['+weight', { kind: 'condition', condition: 'weight', value: true }],
    ['- fuel-in', { kind: 'condition', condition: 'fuel-in', value: false }],
    ['wait FR-080', { kind: 'wait', ref: ref('FR-080') }],
    ['part P-26', { kind: 'part', part: 'P-26' }],
    ['photo FR-060/stamp', { kind: 'photo', ref: ref('FR-060'), slot: 'stamp' }],
  ])('%s', (text, wanted) => {
    expect(parseNeed(text)).toEqual(wanted);
  });

  test.each([
    '',
    'J-110 open',
    'J-110 tight',
    'J-110 final now',
    '+',
    '+weight@L',
    'part P-26@L',
    'photo FR-060',
    'photo FR-060/',
    'until FR-080',
  ])('is not “%s”', (text) => {
    expect(parseNeed(text)).toBeNull();
  });
});

describe('a body line', () => {
  test.each([
    ['snug J-1', { verb: 'snug', ref: { key: 'J-1', position: null } }],
    ['  final   J-1@R', { verb: 'final', ref: { key: 'J-1', position: 'R' } }],
    ['photo stamp', { verb: 'photo', ref: { key: 'stamp', position: null } }],
  ])('%s', (text, wanted) => {
    expect(parseBodyLine(text)).toEqual(wanted);
  });

  test.each(['', 'final', 'tighten J-1', 'final J-1 J-2', 'Final J-1'])('is not “%s”', (text) => {
    expect(parseBodyLine(text)).toBeNull();
  });
});

describe('a condition on options', () => {
  const is = (option: string, choice: string) => ({ kind: 'is', option, choice });
  test.each([
    ['heater=none', is('heater', 'none')],
    ['not heater=none', { kind: 'not', of: is('heater', 'none') }],
    [
      'a=1 or b=2 and c=3',
      { kind: 'or', left: is('a', '1'), right: { kind: 'and', left: is('b', '2'), right: is('c', '3') } },
    ],
    [
      '(a=1 or b=2) and c=3',
      { kind: 'and', left: { kind: 'or', left: is('a', '1'), right: is('b', '2') }, right: is('c', '3') },
    ],
    ['not a=1 and b=2', { kind: 'and', left: { kind: 'not', of: is('a', '1') }, right: is('b', '2') }],
  ])('%s', (text, wanted) => {
    expect(parseWhen(text)).toEqual(wanted);
  });

  test.each(['', 'heater', 'heater=', 'a=1 b=2', 'a=1 and', '(a=1', 'a=1)', 'and a=1', 'a==1', 'a=1 & b=2'])(
    'is not “%s”',
    (text) => {
      expect(parseWhen(text)).toBeNull();
    },
  );

  test('names its options in order', () => {
    const expression = parseWhen('heater=none and not (axle=rebuilt or tank=lined)');
    expect(expression === null ? null : optionsOf(expression)).toEqual(['heater', 'axle', 'tank']);
  });
});

describe('a duration', () => {
  test.each([
    ['30 s', 30_000],
    ['10 min', 600_000],
    ['0.5 h', 1_800_000],
    ['16h', 57_600_000],
    ['7 d', 604_800_000],
    ['h', null],
    ['-1 h', null],
    ['1 week', null],
    ['', null],
  ])('%s → %s', (text, wanted) => {
    expect(parseDuration(text)).toBe(wanted);
  });
});

describe('a reuse rule', () => {
  test.each([
    ['once fitted', { rule: 'once-fitted' }],
    ['once final', { rule: 'once-final' }],
    ['3 times', { rule: 'times', times: 3 }],
    ['always', { rule: 'always' }],
    ['0 times', null],
    ['never', null],
  ])('%s', (text, wanted) => {
    expect(parseReuse(text)).toEqual(wanted);
  });
});
