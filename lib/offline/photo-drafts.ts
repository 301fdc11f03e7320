/**
 * Photographs that were taken and not given with an act yet, kept on this device beside the drafts, so that no reload or
 * cut takes them away. Each belongs to one person, car and act; nobody sees another's. They go when the act is
 * accepted, when they are taken off, and after a month. The device keeps a bounded number of them.
 */
import type { CarId, PersonId } from '@/lib/domain/base/vocabulary';
import { DRAFTS, draftDatabase, oneAfterAnother } from './draft-database';
import type { Copied } from './photo-copy';

export interface PhotoPlace {
  readonly person: PersonId;
  readonly car: CarId;
  /** The act that they are taken for: `report-finding `, `joint J-110 2`. */
  readonly act: string;
}

export interface PhotoDraft {
  readonly key: string;
  readonly place: PhotoPlace;
  /** Of the file, where it had one. */
  readonly name: string;
  readonly about: Copied['about'];
  /** Of the copy. */
  readonly bytes: number;
  /** The device's own clock: for people, never for a rule. */
  readonly takenAt: string;
  /** The shop keeps the copy already; no act names it yet. */
  readonly isSent: boolean;
}

/** On all cars together: of one person, and of everybody on this device. */
export const MOST_OF_ONE = 24;
export const MOST_OF_ALL = 96;
const MOST_BYTES = 64_000_000;
const KEPT_MS = 30 * 24 * 60 * 60 * 1000;

export interface PhotoDrafts {
  /** Those of a place, in the order in which they were taken. */
  readonly on: (place: PhotoPlace) => Promise<readonly (PhotoDraft & { readonly copy: Blob })[]>;
  /** What waits on a car, of one person; without the pictures. */
  readonly waiting: (person: PersonId, car: CarId) => Promise<readonly PhotoDraft[]>;
  /** Null when the device has it for good, else why it has not, and what clears it. */
  readonly keep: (photo: Omit<PhotoDraft, 'takenAt' | 'bytes'>, copy: Blob) => Promise<string | null>;
  readonly markSent: (key: string) => Promise<void>;
  readonly remove: (key: string) => Promise<void>;
  /** An act named these: they stand in the record now. */
  readonly given: (place: PhotoPlace, hashes: readonly string[]) => Promise<void>;
  readonly clear: (place: PhotoPlace) => Promise<void>;
}

export const openPhotoDrafts = (name = DRAFTS): PhotoDrafts => {
  const database = draftDatabase(name);
  const inOrder = oneAfterAnother();
  /** All that are there, the first taken first; what is too old is thrown away on the way. */
  const all = async (): Promise<readonly PhotoDraft[]> => {
    const found = await (await database()).getAll('photos');
    const oldest = new Date(Date.now() - KEPT_MS).toISOString();
    await drop(found.filter(({ takenAt }) => takenAt < oldest));
    return found.filter(({ takenAt }) => takenAt >= oldest).sort((a, b) => (a.takenAt < b.takenAt ? -1 : 1));
  };
  const drop = async (photos: readonly { readonly key: string }[]): Promise<void> => {
    if (photos.length === 0) return;
    const change = (await database()).transaction(['photos', 'copies'], 'readwrite');
    for (const { key } of photos) {
      void change.objectStore('photos').delete(key).catch(ignored);
      void change.objectStore('copies').delete(key).catch(ignored);
    }
    await change.done;
  };
  return {
    on: (place) =>
      inOrder(async () => {
        const own = (await all()).filter((each) => isAt(each, place));
        const db = await database();
        const copies = await Promise.all(own.map(({ key }) => db.get('copies', key)));
        return own.flatMap((photo, index) => {
          const bytes = copies[index];
          return bytes === undefined ? [] : [{ ...photo, copy: new Blob([bytes], { type: 'image/jpeg' }) }];
        });
      }),
    waiting: (person, car) =>
      inOrder(async () => (await all()).filter(({ place }) => place.person === person && place.car === car)),
    keep: (photo, copy) =>
      inOrder(async () => {
        try {
          const full = whyFull(await all(), photo.place.person, copy.size);
          if (full !== null) return full;
          const bytes = await copy.arrayBuffer();
          // Strict: said to be kept only once the disk has it.
          const change = (await database()).transaction(['photos', 'copies'], 'readwrite', {
            durability: 'strict',
          });
          const takenAt = new Date().toISOString();
          void change.objectStore('copies').put(bytes, photo.key).catch(ignored);
          void change
            .objectStore('photos')
            .put({ ...photo, bytes: copy.size, takenAt })
            .catch(ignored);
          await change.done;
          return null;
        } catch (error) {
          return refusedWords(error);
        }
      }),
    markSent: (key) =>
      inOrder(async () => {
        const db = await database();
        const before = await db.get('photos', key);
        if (before !== undefined) await db.put('photos', { ...before, isSent: true });
      }),
    remove: (key) => inOrder(() => drop([{ key }])),
    given: (place, hashes) =>
      inOrder(async () =>
        drop((await all()).filter((each) => isAt(each, place) && hashes.includes(each.about.sha256))),
      ),
    clear: (place) => inOrder(async () => drop((await all()).filter((each) => isAt(each, place)))),
  };
};

/** Of this page: what is cleared here is gone before anybody looks for it again. */
export const photoDrafts = openPhotoDrafts();

/** Its reason is the transaction's, which is waited for. */
const ignored = (): void => undefined;

const isAt = ({ place }: Pick<PhotoDraft, 'place'>, { person, car, act }: PhotoPlace): boolean =>
  place.person === person && place.car === car && place.act === act;

/** Null where there is room for one more. */
const whyFull = (photos: readonly PhotoDraft[], person: PersonId, bytes: number): string | null => {
  const own = photos.filter(({ place }) => place.person === person);
  if (own.length >= MOST_OF_ONE)
    return `${String(own.length)} photographs of yours wait on this device already, on ${carsOf(own)}. Give them with what they show, or take some off.`;
  const total = photos.reduce((sum, each) => sum + each.bytes, bytes);
  return photos.length >= MOST_OF_ALL || total > MOST_BYTES
    ? `This device holds ${String(photos.length)} photographs that wait for their act, on ${carsOf(photos)}, and takes no more. Whoever took them gives them, or takes some off.`
    : null;
};

const carsOf = (photos: readonly PhotoDraft[]): string =>
  [...new Set(photos.map(({ place }) => place.car))].sort().join(', ');

const refusedWords = (error: unknown): string =>
  error instanceof DOMException && error.name === 'QuotaExceededError'
    ? 'The disk of this device is full. Make room on it, or give the photograph before you leave the page.'
    : 'This browser stores nothing for the page. Give the photograph before you leave the page.';
