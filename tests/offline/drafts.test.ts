import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { openDrafts } from '@/lib/offline/drafts';
import type { DraftKey } from '@/lib/offline/drafts';

interface Body {
  readonly given: Readonly<Record<string, string>>;
}
const isBody = (body: unknown): body is Body => typeof body === 'object' && body !== null && 'given' in body;
const KEY: DraftKey = { person: 'tobit', car: 'C54-012', joint: 'J-212', cycle: 1, tool: 'T-05' };
const body = (reading: string): Body => ({ given: { 'reading:1': reading } });

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('drafts', () => {
  it('are there again after the page was gone', async () => {
    await openDrafts(isBody).save(KEY, body('40.5'));
    const [draft, ...others] = await openDrafts(isBody).on('C54-012', 'J-212');
    expect(others).toEqual([]);
    expect(draft).toMatchObject({ key: KEY, body: body('40.5') });
  });

  it('keep the last of many quick changes, and when they were begun', async () => {
    const drafts = openDrafts(isBody);
    await drafts.save(KEY, body('4'));
    const [first] = await drafts.on('C54-012', 'J-212');
    await Promise.all(['40', '40.', '40.5'].map((text) => drafts.save(KEY, body(text))));
    const [last] = await drafts.on('C54-012', 'J-212');
    expect(last?.body).toEqual(body('40.5'));
    expect(last?.begunAt).toBe(first?.begunAt);
  });

  it('are kept apart by person, car, joint, cycle and tool', async () => {
    const drafts = openDrafts(isBody);
    const others: readonly Partial<DraftKey>[] = [
      { person: 'ines' },
      { cycle: 2 },
      { tool: 'T-06' },
      { tool: '' },
    ];
    await drafts.save(KEY, body('1'));
    for (const other of others) await drafts.save({ ...KEY, ...other }, body('2'));
    await drafts.save({ ...KEY, car: 'C54-013' }, body('3'));
    await drafts.save({ ...KEY, joint: 'J-212@L' }, body('4'));
    expect(await drafts.on('C54-012', 'J-212')).toHaveLength(5);
    expect(await drafts.on('C54-013', 'J-212')).toHaveLength(1);
    expect(await drafts.on('C54-012', 'J-212@L')).toHaveLength(1);
  });

  it('are gone once discarded, and only that one', async () => {
    const drafts = openDrafts(isBody);
    await drafts.save(KEY, body('1'));
    await drafts.save({ ...KEY, person: 'ines' }, body('2'));
    await drafts.discard(KEY);
    expect((await drafts.on('C54-012', 'J-212')).map(({ key }) => key.person)).toEqual(['ines']);
    await drafts.discard(KEY);
  });

  it('a discard after a save wins, though nobody waited for the save', async () => {
    const drafts = openDrafts(isBody);
    void drafts.save(KEY, body('1'));
    void drafts.discard(KEY);
    expect(await drafts.on('C54-012', 'J-212')).toEqual([]);
  });

  it('of an unknown shape are neither shown nor thrown away', async () => {
    await openDrafts((_: unknown): _ is string => true).save(KEY, 'of an earlier version');
    expect(await openDrafts(isBody).on('C54-012', 'J-212')).toEqual([]);
    expect(await openDrafts((_: unknown): _ is string => true).on('C54-012', 'J-212')).toHaveLength(1);
  });

  it('say so where the browser keeps nothing, and go on when it does again', async () => {
    const good = globalThis.indexedDB;
    const drafts = openDrafts(isBody);
    Reflect.set(globalThis, 'indexedDB', {
      open: () => {
        throw new Error('SecurityError');
      },
    });
    await expect(drafts.save(KEY, body('1'))).rejects.toThrow('SecurityError');
    globalThis.indexedDB = good;
    await drafts.save(KEY, body('2'));
    expect(await drafts.on('C54-012', 'J-212')).toHaveLength(1);
  });
});
