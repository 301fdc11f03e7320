import { test as propertyTest } from '@fast-check/vitest';
import canonicalize from 'canonicalize';
import { fc } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { canonicalJson, storedJson } from '@/lib/wire/canonical-json';
import { planHash } from '@/lib/wire/plan-hash';

// Keys that sort, quote or behave otherwise than they look: UTF-16 order, escapes, numbers, the prototype's own names.
const key = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom(
    '',
    '10',
    '9',
    '__proto__',
    'constructor',
    'toJSON',
    '\u{1F600}',
    '\uFB33',
    '\u2028',
    '"',
    '\\',
    '\n',
    'é',
    'e\u0301',
  ),
);
const { json } = fc.letrec((tie) => ({
  json: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom(null, true, false),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.integer(),
    fc.constantFrom(-0, 1e21, 1e-7, 5e-324, Number.MAX_VALUE, 333333333.33333329),
    fc.string({ unit: 'grapheme' }),
    fc.array(tie('json'), { maxLength: 5 }),
    fc
      .array(fc.tuple(key, tie('json')), { maxLength: 5 })
      .map((fields) => Object.fromEntries(fields) as unknown),
  ),
}));

describe('canonical JSON', () => {
  propertyTest.prop([json], { numRuns: 2000 })('has the bytes of the reference program', (value) => {
    expect(canonicalJson(value)).toBe(canonicalize(value));
  });

  propertyTest.prop([json], { numRuns: 500 })('says what the value says', (value) => {
    expect(canonicalJson(JSON.parse(canonicalJson(value)))).toBe(canonicalJson(value));
  });

  test.each([
    [
      'the sorting example of RFC 8785',
      { '\u20ac': 1, '\r': 2, '\ufb33': 3, '1': 4, '\u{1F600}': 5, '\u0080': 6, ö: 7 },
      '{"\\r":2,"1":4,"\u0080":6,"ö":7,"€":1,"\u{1F600}":5,"\ufb33":3}',
    ],
    ['minus zero', [-0], '[0]'],
    [
      'an own field __proto__',
      JSON.parse('{"b":1,"__proto__":{"a":2}}') as unknown,
      '{"__proto__":{"a":2},"b":1}',
    ],
    ['an object without a prototype', Object.assign(Object.create(null) as object, { a: [] }), '{"a":[]}'],
  ])('%s', (_, value, text) => {
    expect(canonicalJson(value)).toBe(text);
  });

  test.each([
    ['NaN', { a: [1, Number.NaN] }, '“a[1]” is no JSON value: NaN.'],
    ['Infinity', [Infinity], '“[0]” is no JSON value: Infinity.'],
    ['undefined', { a: { b: undefined } }, '“a.b” is no JSON value: undefined.'],
    ['a hole in a list', Array.from({ length: 1 }), '“[0]” is no JSON value: undefined.'],
    ['BigInt', 1n, 'The value is no JSON value: bigint.'],
    ['a date', { at: new Date(0) }, '“at” is no JSON value: no plain object.'],
    ['half a pair', { a: 'x\ud83d' }, '“a” holds half a surrogate pair.'],
    ['half a pair in a key', { a: { '\ude00': 1 } }, '“a” holds half a surrogate pair.'],
  ])('refuses %s and names the place', (_, value, message) => {
    expect(() => canonicalJson(value)).toThrow(new TypeError(message));
  });
});

describe('JSON as it is stored', () => {
  const stored = fc.dictionary(fc.string(), fc.oneof(json, fc.constant(undefined)));

  propertyTest.prop([stored], { numRuns: 500 })('is what a store gives back, canonically', (value) => {
    expect(storedJson({ value })).toBe(canonicalJson(JSON.parse(JSON.stringify({ value }))));
  });

  test('names what is none of it, not what is merely absent', () => {
    expect(() => storedJson({ a: undefined, b: [undefined] })).toThrow(
      new TypeError('“b[0]” is no JSON value: undefined.'),
    );
  });
});

describe('the hash of a plan', () => {
  const plan = { plan: 'Trolley', revision: 'r1', stages: { A: { name: 'First' }, B: { name: 'Second' } } };

  test('does not hang on the order of fields that a reader wrote', () => {
    expect(planHash({ revision: 'r1', stages: plan.stages, plan: 'Trolley' })).toBe(planHash(plan));
    expect(planHash(plan)).toMatch(/^[0-9a-f]{64}$/);
  });

  test('changes with one letter', () => {
    expect(planHash({ ...plan, revision: 'r2' })).not.toBe(planHash(plan));
  });
});
