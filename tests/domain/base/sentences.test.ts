import { describe, expect, test } from 'vitest';
import { refuse } from '@/lib/domain/base/refusals';
import type { RefusalCode } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import { SAMPLES } from '@/tests/support/refusal-samples';

const CODES = Object.keys(SAMPLES) as RefusalCode[];
const named = (key: string): string | null => (key.startsWith('J-') ? 'Axle to spring' : null);
const said = (code: RefusalCode, nameOf = named): readonly string[] =>
  SAMPLES[code].map((details) => sentence(refuse(code, details), nameOf));

/** Two sentences (what is wrong, what clears it), or one that says itself that nothing has to be cleared. */
const saysWhatClearsIt = (text: string): boolean =>
  /[.?”] [A-Z“]/.test(text) || /\bnothing to clear\b|\bno doubt\b/.test(text);

describe('given a refusal, its words', () => {
  test('there are samples for all of them', () => {
    expect(CODES.length).toBeGreaterThan(80);
    expect(CODES.filter((code) => SAMPLES[code].length === 0)).toEqual([]);
  });

  test.each(CODES)('%s: whole words, a full stop, and no code', (code) => {
    for (const text of [...said(code), ...said(code, () => null)]) {
      expect(text).toMatch(/^\S.*\.$/);
      expect(text).not.toMatch(/undefined|null|NaN|\[object|\$\{|function|=>/);
      expect(text).not.toMatch(/ {2}| [.,;:]|\.\.|“”/);
      expect(text).not.toContain(code);
    }
  });

  test.each(CODES)('%s: says what clears it', (code) => {
    for (const text of said(code)) expect([text, saysWhatClearsIt(text)]).toEqual([text, true]);
  });

  test.each(CODES)('%s: names what it is about', (code) => {
    for (const details of SAMPLES[code]) {
      const text = sentence(refuse(code, details), named);
      const keys = Object.values<unknown>(details).filter(
        (each): each is string => typeof each === 'string' && /^[A-Z]{1,2}-\d/.test(each),
      );
      for (const key of keys) expect(text).toContain(key);
      if (keys.includes('J-110@L')) expect(text).toContain('Axle to spring, left (J-110@L)');
    }
  });

  test('different refusals of one code read differently', () => {
    for (const code of CODES) expect(new Set(said(code)).size).toBe(SAMPLES[code].length);
  });

  test('some of them in full', () => {
    expect(said('joint-below-level').at(-1)).toBe(
      'Axle to spring, left (J-110@L) is final and must be verified. A second person verifies it.',
    );
    expect(said('reading-above')).toEqual([
      'No. 3 of Axle to spring, left (J-110@L) got 51 N·m, over 42 to 48 N·m. Report it as over-torqued, renew it, and make the full pass again.',
    ]);
    expect(said('stopgap-in-place')).toEqual([
      'G-01: 1 of 14 cable ties still in. Take it out and count.',
      'G-01: 14 of 14 cable ties still in. Take them out and count.',
    ]);
    expect(said('unit-doubtful')).toEqual([
      '540 N·m on Axle to spring, left (J-110@L) would fit if lbf·ft and lbf·in were mixed up. Which unit does the tool show? Confirm lbf·ft, or correct it.',
    ]);
    expect(said('not-allowed')[1]).toBe('tom may not say “a hold is over”. That is for a lead or an owner.');
  });

  test('parts and joints that are several pieces have the verbs of several', () => {
    const inPlan = (key: string): string | null =>
      ({ 'P-33': 'uprights', 'P-1': 'chassis', 'J-7': 'U-bolts to axle', 'FR-1': 'Bleed the brakes' })[key] ??
      null;
    expect(sentence(refuse('part-not-fitted', { part: 'P-33' }), inPlan)).toBe(
      'Uprights (P-33) are not fitted. Fit them and record that.',
    );
    expect(sentence(refuse('part-not-fitted', { part: 'P-1' }), inPlan)).toBe(
      'Chassis (P-1) is not fitted. Fit it and record that.',
    );
    expect(sentence(refuse('joint-not-final', { joint: 'J-7', level: 'snug' }), inPlan)).toBe(
      'U-bolts to axle (J-7) are snug. Bring them to final first.',
    );
    expect(
      sentence(refuse('operation-unfinished', { operation: 'FR-1', status: 'not started' }), inPlan),
    ).toBe('Bleed the brakes (FR-1) is not started. Start and finish it.');
  });

  test('a condition is said in words, not by its key', () => {
    expect(said('condition-true')).toEqual([
      '“engine in” is so, and must not be. End it first, and record that.',
    ]);
  });

  test('a person is called by name alone, and by their id only where nobody knows the name', () => {
    const told = CODES.flatMap((code) =>
      SAMPLES[code].flatMap((details) => {
        const person = 'actor' in details ? details.actor : 'person' in details ? details.person : null;
        const names = (key: string): string | null => (key === person ? 'Zoe Oakes' : named(key));
        return person === null ? [] : [{ person, text: sentence(refuse(code, details), names) }];
      }),
    );
    expect(told.length).toBeGreaterThan(8);
    for (const { person, text } of told) {
      expect(text).toContain('Zoe Oakes');
      expect(text).not.toMatch(new RegExp(`\\b${person}\\b`));
    }
    expect(said('not-on-it', () => null)[0]).toMatch(/^tom is not on /);
  });

  test('a reason that somebody wrote as a sentence keeps one full stop', () => {
    const hold = refuse('hold-stands', {
      hold: 'H-1',
      scope: 'gate',
      reason: 'The customer sits in it today.',
    });
    expect(sentence(hold, () => null)).toBe(
      'H-1 holds the car at its gate: The customer sits in it today. A lead releases it.',
    );
  });

  test('two cars fill a room together: they are told with “and”', () => {
    expect(said('room-full')[1]).toMatch(/^EN has room for 2, and C2 and C3 stand there\./);
  });
});
