import { describe, expect, test } from 'vitest';
import { nearestWord } from '@/lib/domain/base/nearest';

const words = ['FR-010', 'FR-020', 'J-110', 'weight', 'minutes'];

describe('the nearest word', () => {
  test.each([
    ['a letter replaced', 'FR-011', 'FR-010'],
    ['a letter left out', 'wight', 'weight'],
    ['a letter too many', 'weeight', 'weight'],
    ['two letters swapped', 'minuets', 'minutes'],
    ['upper and lower case', 'j-110', 'J-110'],
    ['the word itself', 'weight', 'weight'],
    ['a slip in a short word', 'J-1', null],
    ['of two equally near the first', 'FR-030', 'FR-010'],
    ['nothing near', 'heater', null],
    ['an empty text', '', null],
    ['a text too long to be a key', 'w'.repeat(65), null],
  ])('%s: %s → %s', (_, given, wanted) => {
    expect(nearestWord(given, words)).toBe(wanted);
  });

  test('a word of one letter may be off by one', () => {
    expect(nearestWord('A', ['B'])).toBe('B');
  });

  test('two letters swapped are one slip', () => {
    expect(nearestWord('S1', ['1S'])).toBe('1S');
  });

  test('of six letters two may be wrong and three not', () => {
    expect(nearestWord('abcdef', ['abcdxy'])).toBe('abcdxy');
    expect(nearestWord('abcdef', ['abcxyz'])).toBeNull();
  });

  test('of no words none is near', () => {
    expect(nearestWord('A', [])).toBeNull();
  });
});
