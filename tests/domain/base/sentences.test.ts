import { describe, expect, test } from 'vitest';
import { refuse } from '@/lib/domain/base/refusals';
import type { RefusalCode, RefusalDetails } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';

type Samples = { readonly [Code in RefusalCode]: readonly RefusalDetails[Code][] };

const J = { joint: 'J-110@L' };
const OP = { operation: 'AX-030@L' };
const K = { check: 'K-04' };
const READING = { ...J, fastener: 3, delivered: '51 N·m', window: '42 to 48 N·m' };

/** Every shape that the details of a code can have; a code without a sample does not compile. */
const SAMPLES: Samples = {
  'operation-unfinished': (['not started', 'running', 'paused', 'due again'] as const).map((status) => ({
    ...OP,
    status,
  })),
  'joint-below-level': [
    { ...J, level: 'open', wanted: 'snug' },
    { ...J, level: 'snug', wanted: 'final' },
    { ...J, level: 'snug', wanted: 'verified' },
    { ...J, level: 'final', wanted: 'verified' },
  ],
  'joint-in-doubt': ['recheck', 'retorque', 'renew'].map((remedy) => ({
    ...J,
    cause: 'neighbour-opened',
    remedy,
    because: 'J-111 was opened',
  })),
  'joint-work-missing': (['open', 'recheck', 'retorque'] as const).map((work) => ({ ...J, work })),
  'check-not-clear': (['not done', 'failed', 'due again', 'running'] as const).map((status) => ({
    ...K,
    status,
  })),
  'stopgap-in-place': [
    { stopgap: 'G-01', left: 1, placed: 14, what: 'cable ties' },
    { stopgap: 'G-01', left: 14, placed: 14, what: 'cable ties' },
  ],
  'condition-not-true': [{ condition: 'weight' }],
  'condition-true': [{ condition: 'engine-in' }],
  'wait-running': [
    { ...OP, until: null },
    { ...OP, until: '2026-03-03T08:00:00.000Z' },
  ],
  'part-absent': [{ part: 'P-26' }],
  'part-not-fitted': [{ part: 'P-26' }],
  'photo-missing': [{ of: 'FR-060', slot: 'stamp' }],
  'option-undecided': [{ option: 'heater', choices: ['none', 'fitted'] }],
  'finding-undecided': [{ finding: 'F-1', about: 'P-26' }],
  'finding-not-closed': (
    ['rework', 'replace', 'repair-outside', 'scrap', 'misread', 'use-as-is'] as const
  ).map((disposition) => ({ finding: 'F-1', about: 'P-26', disposition })),
  'change-undecided': [{ change: 'D-1' }],
  'part-owed': [
    { part: 'P-11', takenFor: '' },
    { part: 'P-11', takenFor: 'C54-012' },
  ],
  'unknown-thing': [{ what: 'joint', key: 'J-999' }],
  'not-allowed': [
    { says: 'the car goes back to an earlier stage', act: 'send-back', roles: ['lead'], actor: 'tom' },
    { says: 'a hold is over', act: 'release-hold', roles: ['lead', 'owner'], actor: 'tom' },
  ],
  'unknown-person': [{ person: 'eve' }],
  'not-qualified': [{ person: 'tom', qualification: 'brakes', day: '2026-03-02' }],
  'not-independent': [{ person: 'tom', ...J }],
  'approver-not-independent': [{ person: 'tom', change: 'D-1' }],
  'strike-needs-lead': [{ signature: 'S-1', actor: 'tom' }],
  'last-owner': [{ person: 'ada' }],
  'stage-not-reached': [{ ...OP, stage: 'BD', standsIn: 'AX' }],
  'hold-stands': ['gate', 'work', 'things'].map((scope) => ({ hold: 'H-1', scope, reason: 'paper missing' })),
  'operation-not-running': [OP],
  'operation-already-running': [OP],
  'operation-already-finished': [OP],
  'already-on-it': [{ ...OP, person: 'tom' }],
  'not-on-it': [{ ...OP, person: 'tom' }],
  'clock-running': [{ person: 'tom', car: 'C1', ...OP }],
  'crew-too-small': [
    { ...OP, crew: 2, present: 1 },
    { ...OP, crew: 4, present: 2 },
  ],
  'no-work-names-joint': [
    ...(['snug', 'final', 'recheck'] as const).map((act) => ({ ...J, act, operations: [] })),
    { ...J, act: 'final', operations: ['AX-030@L'] },
    { ...J, act: 'snug', operations: ['AX-030@L', 'AX-040', 'WH-010'] },
  ],
  'stale-cycle': [{ ...J, named: 1, current: 2 }],
  'stale-run': [{ ...OP, named: 1, current: 2 }],
  'stale-round': [{ ...K, named: 1, current: 2 }],
  'level-already': [{ ...J, level: 'final' }],
  'joint-not-final': [{ ...J, level: 'snug' }],
  'nothing-to-recheck': [J],
  'doubt-needs-more': ['retorque', 'renew'].map((remedy) => ({
    ...J,
    remedy,
    because: 'a stripe is broken',
  })),
  'slave-part-in-joint': [{ ...J, stopgap: 'G-10' }],
  'check-already-clear': [K],
  'check-not-begun': [K],
  'check-too-short': [{ ...K, ready: '2026-03-02T08:10:00.000Z' }],
  'value-missing': [{ ...K, value: 'float', limit: 'at most 0.2 mm' }],
  'value-unreadable': [{ field: 'float', text: 'o.2', wanted: 'a number in mm' }],
  'removed-more-than-placed': [
    { stopgap: 'G-01', left: 0, removed: 1 },
    { stopgap: 'G-01', left: 1, removed: 2 },
    { stopgap: 'G-01', left: 13, removed: 14 },
  ],
  'condition-set-by-work': [{ condition: 'bled', operations: ['ST-130'] }],
  'condition-already': [{ condition: 'on-stands', value: true }],
  'part-not-taken-into-work': [
    { part: 'P-26', operations: [] },
    { part: 'P-26', operations: ['AX-130'] },
  ],
  'part-already': ['present', 'fitted'].map((state) => ({ part: 'P-26', state })),
  'finding-on-part': [{ finding: 'F-1', part: 'P-26' }],
  'finding-already': [{ finding: 'F-1', state: 'closed' }],
  'never-concede': [K],
  'change-already': [{ change: 'D-1', state: 'approved' }],
  'hold-already-released': [{ hold: 'H-1' }],
  'option-already-chosen': [{ option: 'heater', choice: 'none' }],
  'choice-unknown': [{ option: 'heater', choice: 'steam', choices: ['none', 'fitted'] }],
  'already-there': [{ what: 'tool', key: 'T-02' }],
  'size-unreadable': [{ text: 'M10x1.25 10.9', says: 'The length is missing. Write it in mm, as ×40.' }],
  'plan-says': [{ item: 'NUT-10', field: 'unit', planned: 'pc' }],
  'comes-with-itself': [{ item: 'NUT-10' }],
  'no-order-day': [{ supplier: 'Thornby Fixings' }],
  'steps-out-of-order': [
    { of: 'freight', what: 'there are none' },
    { of: 'prices', what: '5, 2' },
  ],
  'weight-missing': [{ supplier: 'Thornby Fixings', item: 'NUT-10' }],
  'offer-ended': [{ offer: 'H/NUT-10/50' }],
  'given-before': [{ what: 'offer', key: 'H/NUT-10/50' }],
  'pin-empty': [{ item: 'NUT-10' }],
  'not-offered': [{ supplier: 'Thornby Fixings', item: 'NUT-10' }],
  'ordered-since': [{ first: 'PO-3' }],
  'order-day-past': [{ supplier: 'Thornby Fixings', day: '2026-03-04' }],
  'prices-changed': [{ supplier: 'Thornby Fixings' }],
  'order-cancelled': [{ order: 'PO-3' }],
  'no-value-yet': [J],
  'method-does-not-fit': [{ ...J, method: 'firm', given: 'tool T-02' }],
  'tool-missing': [{ ...J, method: 'click' }],
  'tool-does-not-fit': ['click', 'dial'].map((method) => ({ tool: 'T-02', kind: 'gauge', ...J, method })),
  'tool-out-of-calibration': [
    { tool: 'T-02', due: null, day: '2026-03-02' },
    { tool: 'T-02', due: '2026-03-01', day: '2026-03-02' },
  ],
  'tool-cycles-used-up': [{ tool: 'T-02', cycles: 5000 }],
  'tool-suspect': [{ tool: 'T-02', reason: 'dropped', from: '2026-03-02T08:00:00.000Z' }],
  'setting-outside-tool-range': [{ tool: 'T-02', value: '120 N·m', range: '5 to 100 N·m' }],
  'adapter-length-unknown': [
    { tool: 'T-02', adapter: 'A-1' },
    { tool: 'T-02', adapter: '' },
  ],
  'reading-below': [{ ...READING, delivered: '39 N·m' }],
  'reading-above': [READING],
  'unit-doubtful': [{ ...J, value: '540 N·m', unit: 'lbf·ft', plausible: 'lbf·ft and lbf·in' }],
  'unit-does-not-fit': [{ unit: 'bar', wanted: 'N·m' }],
  'passes-missing': [
    { ...J, wanted: 1, given: 0 },
    { ...J, wanted: 2, given: 1 },
  ],
  'pattern-not-followed': [
    { ...J, pass: 2, wanted: [1, 3, 2, 4], given: [1, 2, 3, 4] },
    { ...J, pass: 2, wanted: [1, 3, 2, 4], given: [] },
  ],
  'readings-missing': [
    { ...J, what: 'readings', wanted: 4, given: 2 },
    { ...J, what: 'the setting', wanted: 1, given: 0 },
  ],
  'step-missing': [{ ...J, step: 'pin in' }],
  'step-outside': [{ ...J, step: 'preload', value: '9', window: '2 to 6 N·m' }],
  'verify-method-differs': [{ ...J, wanted: 'witnessed', given: 'seen' }],
  'hardware-wrong': [
    { ...J, item: 'B-M8', planned: ['B-M10'], substitutes: [] },
    { ...J, item: 'B-M8', planned: ['B-M10', 'N-M10'], substitutes: ['B-M10x45'] },
  ],
  'substitute-needs-lead': [{ ...J, item: 'B-M10x45', instead: 'B-M10' }],
  'hardware-spent': [
    { ...J, item: 'N-M10', fastener: 3, rule: 'used once, spent at final torque' },
    { ...J, item: 'gasket', fastener: null, rule: 'used once, spent when fitted' },
  ],
  'lot-quarantined': [{ lot: 'L-1', item: 'N-M10', reason: 'soft' }],
  'lot-expired': [{ lot: 'L-1', item: 'BF-4', expired: '2026-03-01' }],
  'lot-of-other-item': [{ lot: 'L-1', item: 'N-M10', holds: 'N-M8' }],
  'lot-not-quarantined': [{ lot: 'L-1' }],
  'room-full': [
    { stage: 'EN', capacity: 1, cars: ['C2'] },
    { stage: 'EN', capacity: 2, cars: ['C2', 'C3'] },
  ],
  'last-gate': [{ stage: 'PR' }],
  'not-last-gate': [{ stage: 'EN', last: 'PR' }],
  'one-stage-at-a-time': [{ from: 'AX', to: 'EN', next: 'ST' }],
  'car-delivered': [{ car: 'C1' }],
};

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
      if (keys.includes(J.joint)) expect(text).toContain('Axle to spring, left (J-110@L)');
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
