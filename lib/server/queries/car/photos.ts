/** Photographs stand where what they show stands: in its own row, and in that of the work or finding it belongs to. */
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { PhotoRow } from '@/lib/domain/car/rows';
import type { RowView } from '@/lib/wire/views/car';
import { isKeptName } from '@/lib/wire/views/photo';
import type { PhotoRef } from '@/lib/wire/views/photo';
import type { Seen } from './seen';

/** What naming a photograph takes. */
interface Shown extends Pick<Seen, 'car' | 'words' | 'when'> {
  readonly tag: (person: PersonId, at: Instant) => { readonly name: string };
}

/** Those of the things with these keys, the oldest first. */
export const photosOf = (seen: Shown, things: ReadonlySet<string>): readonly PhotoRef[] =>
  kept(seen)
    .filter(({ of }) => things.has(of))
    .map((photo) => refOf(seen, photo));

/** All of the car, the newest first. */
export const allPhotos = (seen: Shown): readonly PhotoRef[] =>
  kept(seen)
    .map((photo) => refOf(seen, photo))
    .reverse();

/** What is to be looked at beside a thing: its own, and those of the findings about it. */
export const photosAbout = (seen: Shown, key: string): readonly PhotoRef[] =>
  photosOf(
    seen,
    new Set([
      key,
      ...Object.entries(seen.car.findings)
        .filter(([, { about, check }]) => about.key === key || check?.key === key)
        .map(([id]) => id),
    ]),
  );

/** The rows with the photographs of their things, and of the lines of their work. */
export const withPhotos = <Row extends RowView>(seen: Seen, rows: readonly Row[]): readonly Row[] => {
  if (Object.keys(seen.car.photos).length === 0) return rows;
  return rows.map((row) => {
    const own = keyOf(row.id);
    const check = row.id.startsWith('finding:') ? seen.car.findings[own]?.check?.key : undefined;
    const inside = row.body.flatMap(({ id }) => (id === null ? [] : [keyOf(id)]));
    const photos = photosOf(seen, new Set([own, ...inside, ...(check === undefined ? [] : [check])]));
    return photos.length === 0 ? row : { ...row, photos };
  });
};

/** The same one may stand with several things; the copy is one. */
const kept = ({ car }: Shown): readonly PhotoRow[] =>
  Object.values(car.photos)
    .filter(({ hash }) => isKeptName(hash))
    .sort((a, b) => a.at.localeCompare(b.at));

const refOf = (seen: Shown, { of, slot, hash, by, at }: PhotoRow): PhotoRef => ({
  hash,
  shows: `${of === seen.car.id ? seen.car.chassis : thingOf(seen, of)}, ${slot}`,
  taken: `${seen.tag(by, at).name}, ${seen.when(at)}`,
});

/** A finding's number says little: what it is about goes with it. */
const thingOf = (seen: Shown, of: string): string => {
  const about = seen.car.findings[of]?.about;
  return about === undefined
    ? seen.words.thing(of)
    : `${of} ${about.kind === 'place' ? about.key : seen.words.thing(about.key)}`;
};

/** `joint:J-110@L` → `J-110@L`. */
const keyOf = (anchor: string): string => anchor.slice(anchor.indexOf(':') + 1);
