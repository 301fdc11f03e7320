/** Photographs that wait on the device for their act: kept over a reload, each person's own, and never without end. */
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openDrafts } from '@/lib/offline/drafts';
import { MOST_OF_ALL, MOST_OF_ONE, openPhotoDrafts } from '@/lib/offline/photo-drafts';
import type { PhotoDrafts, PhotoPlace } from '@/lib/offline/photo-drafts';

const PLACE: PhotoPlace = { person: 'tobit', car: 'C54-012', act: 'report-finding ' };

const about = (name: string) => ({
  sha256: name.padEnd(64, '0'),
  bytes: 10,
  type: 'image/jpeg' as const,
  copy: '1'.repeat(64),
});
let count = 0;
const keep = (
  drafts: PhotoDrafts,
  place: Partial<PhotoPlace> = {},
  { key = `k-${String((count += 1))}`, size = 3 } = {},
): Promise<string | null> =>
  drafts.keep(
    { key, place: { ...PLACE, ...place }, name: 'hub.png', about: about(key), isSent: false },
    new Blob([new Uint8Array(size).fill(7)]),
  );

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('photographs that wait', () => {
  it('are there again after the page was gone, with their bytes and how far they were', async () => {
    const first = openPhotoDrafts();
    expect(await keep(first, {}, { key: 'a' })).toBeNull();
    await first.markSent('a');
    const [photo, ...others] = await openPhotoDrafts().on(PLACE);
    expect(others).toEqual([]);
    expect(photo).toMatchObject({ key: 'a', isSent: true, about: about('a') });
    expect(new Uint8Array((await photo?.copy.arrayBuffer()) ?? new ArrayBuffer())).toEqual(
      Uint8Array.from([7, 7, 7]),
    );
  });

  it('are seen by who took them alone, on their car and for their act', async () => {
    const drafts = openPhotoDrafts();
    await keep(drafts, {}, { key: 'a' });
    await keep(drafts, { person: 'ines' });
    await keep(drafts, { car: 'C54-013' });
    await keep(drafts, { act: 'joint J-1 1' }, { key: 'b' });
    expect((await drafts.on(PLACE)).map(({ key }) => key)).toEqual(['a']);
    expect((await drafts.waiting('tobit', 'C54-012')).map(({ key }) => key).sort()).toEqual(['a', 'b']);
  });

  it('go when their act has named them, when they are taken off, and when all are thrown away', async () => {
    const drafts = openPhotoDrafts();
    for (const key of ['a', 'b', 'c', 'd']) await keep(drafts, {}, { key });
    await keep(drafts, { person: 'ines' }, { key: 'e' });
    await drafts.given(PLACE, [about('a').sha256, about('e').sha256]);
    await drafts.remove('b');
    expect((await drafts.on(PLACE)).map(({ key }) => key)).toEqual(['c', 'd']);
    await drafts.clear(PLACE);
    expect(await drafts.on(PLACE)).toEqual([]);
    expect(await drafts.on({ ...PLACE, person: 'ines' })).toHaveLength(1);
  });

  it('go after a month, so that nobody’s forgotten ones fill the device', async () => {
    vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-01-01T08:00:00Z') });
    await keep(openPhotoDrafts());
    vi.setSystemTime(new Date('2026-01-30T08:00:00Z'));
    expect(await openPhotoDrafts().on(PLACE)).toHaveLength(1);
    vi.setSystemTime(new Date('2026-02-01T08:00:00Z'));
    expect(await openPhotoDrafts().on(PLACE)).toEqual([]);
  });
});

describe('a device that takes no more says so, and what makes room', () => {
  it('of one person', async () => {
    const drafts = openPhotoDrafts();
    for (let each = 0; each < MOST_OF_ONE; each += 1) expect(await keep(drafts)).toBeNull();
    expect(await keep(drafts, { car: 'C54-014' })).toBe(
      '24 photographs of yours wait on this device already, on C54-012. Give them with what they show, or take some off.',
    );
    expect(await keep(drafts, { person: 'ines' })).toBeNull();
    expect(await drafts.on(PLACE)).toHaveLength(MOST_OF_ONE);
  });

  it('of everybody, by number and by size', async () => {
    const drafts = openPhotoDrafts();
    for (let each = 0; each < MOST_OF_ALL; each += 1)
      expect(await keep(drafts, { person: `p-${String(each % 5)}` })).toBeNull();
    expect(await keep(drafts)).toMatch(/^This device holds 96 photographs .* takes no more\./);
    await drafts.clear({ ...PLACE, person: 'p-0' });
    expect(await keep(drafts)).toBeNull();
    expect(await keep(drafts, {}, { size: 64_000_000 })).toMatch(/takes no more/);
  });

  it('where it stores nothing', async () => {
    globalThis.indexedDB = {
      open: () => {
        throw new DOMException('no', 'SecurityError');
      },
    } as unknown as IDBFactory;
    expect(await keep(openPhotoDrafts())).toBe(
      'This browser stores nothing for the page. Give the photograph before you leave the page.',
    );
  });

  it('where its disk is full', async () => {
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    const said = await keep(openPhotoDrafts());
    put.mockRestore();
    expect(said).toMatch(/^The disk of this device is full\./);
  });
});

it('what an earlier version of the page kept is still there beside them', async () => {
  await new Promise<void>((resolve) => {
    const opening = indexedDB.open('slipmark-drafts', 1);
    opening.onupgradeneeded = () => {
      const store = opening.result.createObjectStore('drafts', { keyPath: 'id' });
      store.createIndex('place', 'place');
      const key = { person: 'tobit', car: 'C54-012', joint: 'J-212', cycle: 1, tool: '' };
      const kept = { key, body: { typed: '40' }, begunAt: '2026-01-01', changedAt: '2026-01-01' };
      store.put({ ...kept, id: 'x', place: JSON.stringify(['C54-012', 'J-212']) });
    };
    opening.onsuccess = () => {
      opening.result.close();
      resolve();
    };
  });
  expect(await keep(openPhotoDrafts())).toBeNull();
  const isBody = (body: unknown): body is object => typeof body === 'object';
  expect(await openDrafts(isBody).on('C54-012', 'J-212')).toMatchObject([{ body: { typed: '40' } }]);
});
