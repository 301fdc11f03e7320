/** Reads what lies where: those places first that want a look. */
import 'server-only';
import { EMPTY_PLACE, onHand, stockText } from '@/lib/domain/shop/stock';
import type { Database } from '@/lib/server/database';
import type { CountRow } from '@/lib/wire/count-file';
import type { ItemView, StockLine, StockView } from '@/lib/wire/views/stock';
import { isEmptied, itemName, lineOf, readShelves } from './stock/lines';

export interface StockAsked {
  readonly isAll: boolean;
  /** Part of a name, a key, a lot or a bin. */
  readonly words: string;
}

/** Words beat the choice: who looks for something wants it found, whatever its state. */
export const stockView = async (db: Database, asked: StockAsked, now: string): Promise<StockView> => {
  const shelves = await readShelves(db, now);
  const rows = Object.values(shelves.stock);
  const every = rows
    .filter((row) => !isEmptied(shelves, row))
    .map((row) => lineOf(shelves, row))
    .sort(byBin);
  const look = every.filter(({ state }) => state.wantsLook);
  const words = asked.words.trim().toLocaleLowerCase('en');
  const lines =
    words !== ''
      ? rows
          .map((row) => lineOf(shelves, row))
          .filter((line) => isMeant(line, words))
          .sort(byBin)
      : asked.isAll
        ? every
        : look;
  return {
    says: saysOf(look.length, every.length, words === '' ? null : lines.length),
    lines: lines.toSorted((a, b) => Number(b.state.wantsLook) - Number(a.state.wantsLook)),
    counts: { look: look.length, all: every.length },
  };
};

/** Null where nothing of that name is known. */
export const itemView = async (db: Database, item: string, now: string): Promise<ItemView | null> => {
  const shelves = await readShelves(db, now);
  const isTraced = shelves.catalogue[item]?.trace === 'lot';
  const rows = Object.values(shelves.stock).filter((row) => row.item === item);
  if (rows.length === 0 && shelves.catalogue[item] === undefined) return null;
  const unsaid = rows.find(({ lot }) => lot === null) ?? { item, lot: null, ...EMPTY_PLACE };
  const lots = rows.filter(({ lot }) => lot !== null);
  // Of a traced thing that is of interest only where something went without a word from which lot.
  const places = isTraced && lots.length > 0 && isEmptied(shelves, unsaid) ? lots : [unsaid, ...lots];
  return {
    item,
    name: itemName(shelves, item),
    bin: shelves.shop.bins[item]?.bin ?? null,
    says: isTraced
      ? 'Traced by lot. What went without a word from which lot is counted by itself.'
      : 'Counted by bin.',
    places: places
      .map((row) => lineOf(shelves, row))
      .sort((a, b) => (a.lot ?? '').localeCompare(b.lot ?? '')),
  };
};

/** Every place that is not empty for good, in the order of the bins: the list that somebody walks past them with. */
export const countRows = async (db: Database, now: string): Promise<readonly CountRow[]> => {
  const shelves = await readShelves(db, now);
  return Object.values(shelves.stock)
    .filter((row) => !isEmptied(shelves, row))
    .map((row) => ({ line: lineOf(shelves, row), books: stockText(onHand(row)) }))
    .sort((a, b) => byBin(a.line, b.line))
    .map(({ line: { bin, item, name, lot }, books }) => ({
      bin: bin ?? '',
      item,
      name,
      lot: lot ?? '',
      books,
    }));
};

const saysOf = (look: number, all: number, found: number | null): string => {
  if (found !== null) return `${String(found)} of that name.`;
  if (all === 0) return 'Nothing is on the books yet.';
  return look === 0
    ? `${String(all)} places, and none wants a look.`
    : `${String(look)} of ${String(all)} places want a look.`;
};

const isMeant = ({ item, name, lot, bin }: StockLine, words: string): boolean =>
  [item, name, lot ?? '', bin ?? ''].some((text) => text.toLocaleLowerCase('en').includes(words));

/** As one walks past them; what has no bin comes last. */
const byBin = (a: StockLine, b: StockLine): number =>
  (a.bin ?? '~').localeCompare(b.bin ?? '~', 'en') || (a.lot ?? '').localeCompare(b.lot ?? '', 'en');
