import { describe, expect, test } from 'vitest';
import { withNews } from '@/components/board/floor-news';
import { messageReader } from '@/lib/offline/live-messages';
import { AT_FIRST, behind, heard } from '@/lib/offline/live-state';
import type { LiveState } from '@/lib/offline/live-state';
import type { News, Stand } from '@/lib/wire/live';
import type { BoardCar, BoardView, ReadyTray } from '@/lib/wire/views/board';

const row = (id: string, version: number): BoardCar => ({
  id,
  chassis: id,
  colour: null,
  model: 'Short',
  revision: 'r1',
  version,
  stage: 0,
  crew: [],
  given: [],
  loose: version,
  hold: null,
  way: [],
  gate: [],
});

/** With one job that lacks something. */
const tray = (lacks: string): ReadyTray => ({
  ready: { jobs: [], more: 0 },
  butForParts: {
    jobs: [{ id: '1', href: '/', chassis: 'A', colour: null, key: 'AX-010', name: 'Axle', takes: '', lacks }],
    more: 0,
  },
});
const lacksIn = ({ tray: { butForParts } }: BoardView) => butForParts.jobs.map(({ lacks }) => lacks);

const stand = (clock: number, versions = {}): Stand => ({ kind: 'stand', clock, versions });
const news = (clock: number, rows: readonly BoardCar[], cars = ['A', 'B']): News => ({
  kind: 'news',
  clock,
  versions: Object.fromEntries(rows.map(({ id, version }) => [`car:${id}`, version])),
  says: `at ${String(clock)}`,
  groups: [{ name: 'Short', stages: [], cars }],
  rows,
});
const after = (...messages: readonly (Stand | News)[]): LiveState => messages.reduce(heard, AT_FIRST);

const view = (clock: number, cars: readonly BoardCar[]): BoardView => ({
  shop: 'Test',
  clock,
  says: `asked at ${String(clock)}`,
  mover: { may: true, says: '' },
  people: null,
  groups: [{ name: 'Short', stages: [], cars }],
  tray: tray(`asked at ${String(clock)}`),
  empty: null,
});
const versionsIn = ({ groups }: BoardView) =>
  groups.flatMap(({ cars }) => cars.map(({ id, version }) => `${id}${String(version)}`));

describe('messages', () => {
  test('come whole however they are cut, and comments are none', () => {
    const text = `:   \n\ndata: ${JSON.stringify(stand(4))}\n\n:\n\ndata: ${JSON.stringify(stand(5))}\n\n`;
    for (let size = 1; size < text.length; size += 7) {
      const read = messageReader();
      const found = [];
      for (let at = 0; at < text.length; at += size) found.push(...read(text.slice(at, at + size)));
      expect(found).toEqual([stand(4), stand(5)]);
    }
  });
});

describe('a board that hears', () => {
  test('shows the newer row, and never an older one', () => {
    const asked = view(10, [row('A', 3), row('B', 4)]);
    expect(versionsIn(withNews(asked, after(stand(10), news(11, [row('A', 4)]))))).toEqual(['A4', 'B4']);
    expect(versionsIn(withNews(asked, after(stand(10), news(11, [row('A', 2)]))))).toEqual(['A3', 'B4']);
  });

  test('that was asked for later than it heard shows what it was given', () => {
    const asked = view(12, [row('A', 5), row('B', 4)]);
    expect(withNews(asked, after(stand(10), news(11, [row('A', 4)], ['A'])))).toBe(asked);
  });

  test('keeps the tray that it heard last, until a later page brings another', () => {
    const told = after(stand(10), { ...news(11, []), tray: tray('two nuts') }, news(12, [row('A', 4)]));
    expect(lacksIn(withNews(view(10, [row('A', 3)]), told))).toEqual(['two nuts']);
    expect(lacksIn(withNews(view(12, [row('A', 4)]), told))).toEqual(['asked at 12']);
    expect(lacksIn(withNews(view(10, [row('A', 3)]), after(stand(10), news(11, []))))).toEqual([
      'asked at 10',
    ]);
  });

  test('drops a message that comes after a newer one', () => {
    const known = after(stand(10), news(12, [row('A', 5)]), news(11, [row('A', 4), row('B', 9)]));
    expect(versionsIn(withNews(view(10, [row('A', 3), row('B', 4)]), known))).toEqual(['A5', 'B4']);
    expect(known.clock).toBe(12);
  });

  test('takes a car that was begun and leaves out one that was delivered', () => {
    const known = after(stand(10), news(11, [row('C', 1)], ['A', 'C']));
    expect(versionsIn(withNews(view(10, [row('A', 3), row('B', 4)]), known))).toEqual(['A3', 'C1']);
  });
});

describe('a page is behind', () => {
  test('when what it shows is older than what was heard, and not when it is as new', () => {
    const known = after(stand(10, { 'car:A': 3, shop: 7 }));
    expect(behind(known, [{ versions: { 'car:A': 3, shop: 7 }, clock: 10, stood: 10 }])).toBe('');
    expect(behind(known, [{ versions: { 'car:A': 2 } }])).toBe('car:A@3');
    expect(behind(known, [{ versions: { 'car:B': 1 } }])).toBe('');
    expect(behind(known, [{ clock: 9 }])).toBe('clock@10');
    expect(behind(known, [{ stood: 9 }])).toBe('stood@10');
  });

  test('news are news to who shows all cars, and none to a board that takes them itself', () => {
    const known = after(stand(10), news(11, [row('A', 4)]));
    expect(behind(known, [{ clock: 10 }])).toBe('clock@11');
    expect(behind(known, [{ stood: 10 }])).toBe('');
  });

  test('when something happened while it was out of touch, whatever it shows', () => {
    expect(behind(after(stand(10), stand(10)), [])).toBe('');
    expect(behind(after(stand(10), stand(12)), [])).toBe('all@12');
  });
});
