/** A refusal that stands open while the car goes on. */
import { describe, expect, test } from 'vitest';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { isOfState, reasonKey, stillRefused } from '@/lib/domain/still-refused';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const document = plan({
  stages: { S1: { name: 'Frame' }, S2: { name: 'Axles' } },
  operations: {
    'FR-010': { name: 'Weld', stage: 'S1', body: ['check K-1'] },
    'FR-020': { name: 'Paint', stage: 'S1', needs: ['FR-010', 'K-1'] },
  },
  checks: { 'K-1': { name: 'Seam', kind: 'visual' } },
});

const START = { type: 'start-operation', operation: 'FR-020' } as const;
const said = (refusals: readonly Refusal[]) => refusals.map((refusal) => ({ refusal }));
const keys = (refusals: readonly Refusal[]): ReadonlySet<string> => new Set(refusals.map(reasonKey));
const codes = (list: readonly { readonly refusal: Refusal }[]) => list.map(({ refusal }) => refusal.code);

describe('given work that is refused its start', () => {
  const refused = (shop: Shop) => shop.refused('tom', START);

  test('then each reason is cleared as the car goes on, and at last none stands', () => {
    const shop = shopWith(document);
    const first = refused(shop);
    expect(first.map(({ code }) => code)).toEqual(['operation-unfinished', 'check-not-clear']);
    const follow = (now: readonly Refusal[]) =>
      stillRefused({ said: said(first), now: said(now), seen: keys(first) });
    expect(follow(first)).toMatchObject({ standing: said(first), cleared: [] });

    // It has begun: the same reason, in today's words.
    shop.begin('tess', 'FR-010');
    expect(follow(refused(shop)).standing[0]?.refusal).toEqual(
      refuse('operation-unfinished', { operation: 'FR-010', status: 'running' }),
    );
    shop.does('tess', { type: 'pass-check', check: 'K-1' });
    expect(codes(follow(refused(shop)).cleared)).toEqual(['check-not-clear']);
    shop.finish('tess', 'FR-010');
    shop.does('tom', START);
    const end = follow([]);
    expect([codes(end.standing), codes(end.cleared)]).toEqual([
      [],
      ['operation-unfinished', 'check-not-clear'],
    ]);
  });

  test('then what has come since stands with it', () => {
    const shop = shopWith(document);
    const first = refused(shop);
    shop.does('leo', { type: 'place-hold', scope: 'work', reason: 'crack found' });
    const { standing } = stillRefused({ said: said(first), now: said(refused(shop)), seen: keys(first) });
    expect(codes(standing)).toEqual(['operation-unfinished', 'check-not-clear', 'hold-stands']);
  });
});

test('what the rules were never heard to say is not cleared by their silence', () => {
  const answer = [refuse('tool-out-of-calibration', { tool: 'T-1', due: null, day: '2026-03-02' })];
  expect(stillRefused({ said: said(answer), now: [], seen: new Set() })).toEqual({
    standing: said(answer),
    cleared: [],
  });
});

test('two of one code about two things are two reasons', () => {
  const [left, right] = [
    refuse('joint-below-level', { joint: 'J-1@L', level: 'snug', wanted: 'final' }),
    refuse('joint-below-level', { joint: 'J-1@R', level: 'snug', wanted: 'final' }),
  ];
  expect(reasonKey(left)).not.toBe(reasonKey(right));
  const { standing, cleared } = stillRefused({
    said: said([left, right]),
    now: said([right]),
    seen: keys([left, right]),
  });
  expect([standing, cleared]).toEqual([said([right]), said([left])]);
});

test('what lies in the claim or in the person is no state of things', () => {
  expect(
    isOfState(refuse('not-qualified', { person: 'tom', qualification: 'weld', day: '2026-03-02' })),
  ).toBe(false);
  expect(isOfState(refuse('value-missing', { check: 'K-1', value: 'gap', limit: '1 mm' }))).toBe(false);
  expect(isOfState(refuse('hold-stands', { hold: 'H-1', scope: 'work', reason: 'x' }))).toBe(true);
});
