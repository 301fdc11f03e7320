/** W16. Ready means that it may be done now: what was decided comes first, and a stopgap stays until its work runs. */
import { describe, expect, test } from 'vitest';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const lines = plan({
  stages: { LN: { name: 'Lines' }, WH: { name: 'Wheels' } },
  operations: {
    'LN-010': { name: 'Hang the lines', stage: 'LN', body: ['place G-1'] },
    'LN-020': { name: 'Clips in, ties out', stage: 'LN', needs: ['LN-010'], body: ['out G-1'] },
    'LN-040': { name: 'Lay the strap', stage: 'LN', body: ['fit P-1'] },
    'LN-050': { name: 'Drill the strap', stage: 'LN', needs: ['LN-040'], madeOn: 'P-1', body: ['check K-2'] },
    'LN-060': { name: 'Test the tank', stage: 'LN', body: ['check K-1'] },
    'LN-070': { name: 'Seal the tank', stage: 'LN', body: [] },
    'LN-080': { name: 'Sender in', stage: 'LN', body: ['fit P-2', 'check K-3'] },
    'WH-010': { name: 'Wheels on', stage: 'WH', notBefore: true, body: [] },
  },
  checks: {
    'K-1': { name: 'Air test', kind: 'functional', values: { bubbles: 'none' }, source: 'invented' },
    'K-2': { name: 'Edge', kind: 'measured', values: { edge: '>= 12 mm' }, source: 'invented', about: 'P-1' },
    'K-3': {
      name: 'Seams',
      kind: 'functional',
      values: { bubbles: 'none' },
      source: 'invented',
      about: 'P-2',
    },
  },
  stopgaps: { 'G-1': { name: 'cable ties', quantity: 3, where: 'along the rail', outBy: 'LN' } },
  parts: { 'P-1': { name: 'Tank strap' }, 'P-2': { name: 'Tank' } },
});

const job = (shop: Shop, key: string) => shop.assess().jobs.find((each) => each.key === key);
const waits = (shop: Shop, key: string): readonly string[] =>
  job(shop, key)?.waitsFor.map(({ code }) => code) ?? ['no such job'];

describe('given a failed check whose finding is decided', () => {
  const failed = (): Shop => {
    const shop = shopWith(lines);
    shop.begin('tom', 'LN-060');
    shop.does('tom', { type: 'fail-check', check: 'K-1', reason: 'pinholes' });
    shop.does('tom', { type: 'pause-operation', operation: 'LN-060', leftAs: 'weeps' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'seal it' });
    return shop;
  };

  test('then the next look waits until its work runs again, and a pass is refused for the same', () => {
    const shop = failed();
    expect(job(shop, 'K-1')?.state).toBe('waiting');
    expect(waits(shop, 'K-1')).toEqual(['operation-not-running']);
    const pass = { type: 'pass-check', check: 'K-1', values: { bubbles: 'yes' } } as const;
    expect(shop.codes('tom', pass)).toEqual(['operation-not-running']);
    shop.does('tom', { type: 'resume-operation', operation: 'LN-060' });
    expect(job(shop, 'K-1')?.state).toBe('ready');
    shop.does('tom', pass);
  });

  test('then one tried before its work was begun waits for that work', () => {
    const shop = shopWith(lines);
    shop.does('tom', { type: 'fail-check', check: 'K-1', reason: 'tried at once' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'seal it' });
    expect(waits(shop, 'K-1')).toEqual(['operation-not-running']);
  });

  test('then the work that holds the look may begin, and what is found good there is fitted there', () => {
    const shop = shopWith(lines);
    shop.does('tom', { type: 'receive-part', part: 'P-2' });
    shop.does('tom', { type: 'fail-check', check: 'K-3', reason: 'pinholes, tried at once' });
    const begin = { type: 'start-operation', operation: 'LN-080' } as const;
    expect(shop.codes('tom', begin)).toEqual(['finding-on-part']);
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'rework', reason: 'line it' });
    shop.does('tom', begin);
    expect(shop.codes('tom', { type: 'fit-part', part: 'P-2' })).toEqual(['finding-on-part']);
    shop.does('tom', { type: 'pass-check', check: 'K-3', values: { bubbles: 'yes' } });
    shop.does('tom', { type: 'fit-part', part: 'P-2' });
    shop.does('tom', { type: 'finish-operation', operation: 'LN-080' });
  });

  test('then a check that fell due again with its work waits for the new run', () => {
    const shop = shopWith(lines);
    shop.perform('tom', 'LN-040');
    shop.perform('tom', 'LN-050');
    shop.does('tom', { type: 'take-part', part: 'P-1', reason: 'for another car' });
    shop.does('tom', { type: 'fail-check', check: 'K-2', reason: 'seen on the bench' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'cracked' });
    expect(waits(shop, 'K-2')).toEqual(['part-absent', 'operation-not-running']);
  });
});

describe('given work that is made on a part', () => {
  test('then it waits while the next piece is owed', () => {
    const shop = shopWith(lines);
    shop.perform('tom', 'LN-040');
    shop.perform('tom', 'LN-050');
    const about = { kind: 'part', key: 'P-1' } as const;
    shop.does('tom', { type: 'report-finding', about, text: 'hair crack' });
    shop.does('leo', { type: 'decide-finding', finding: 'F-1', disposition: 'replace', reason: 'new one' });
    expect(waits(shop, 'LN-050')).toContain('part-absent');
    expect(shop.codes('tom', { type: 'start-operation', operation: 'LN-050' })).toContain('part-absent');
    shop.does('tom', { type: 'receive-part', part: 'P-1' });
    expect(waits(shop, 'LN-050')).not.toContain('part-absent');
  });
});

describe('given a planned stopgap', () => {
  const tied = (): Shop => {
    const shop = shopWith(lines);
    shop.perform('tom', 'LN-010');
    return shop;
  };

  test('then it stays until the work that needs it out runs, and says which', () => {
    const shop = tied();
    expect(job(shop, 'G-1')).toMatchObject({ state: 'waiting', allows: ['remove-stopgap'] });
    expect(job(shop, 'G-1')?.waitsFor).toEqual([
      { code: 'operation-not-running', details: { operation: 'LN-020' } },
    ]);
    shop.does('tom', { type: 'start-operation', operation: 'LN-020' });
    expect(job(shop, 'G-1')?.state).toBe('ready');
  });

  test('then one that came out sooner is recorded all the same: what happened, happened', () => {
    const shop = tied();
    shop.does('tom', { type: 'remove-stopgap', stopgap: 'G-1' });
    expect(job(shop, 'G-1')).toBeUndefined();
  });

  test('then one placed by tap, which no work takes out, is ready to come out', () => {
    const shop = tied();
    shop.does('tom', { type: 'place-stopgap', what: 'a clamp' });
    expect(job(shop, 'G-tap-1')?.state).toBe('ready');
  });
});

test('work of a stage ahead is ready unless the plan says not before', () => {
  const shop = shopWith(lines);
  expect(waits(shop, 'WH-010')).toEqual(['stage-not-reached']);
  expect(job(shop, 'LN-070')?.state).toBe('ready');
});
