/** Components: what was said of them, and where they have been. */
import { lastOuting } from '@/lib/domain/car/component-rows';
import type { ComponentRow, Look, Outing } from '@/lib/domain/car/component-rows';
import type { Car, PartRow } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

/** The part's row and, where it has a history, its component's. */
const put = (
  car: Car,
  event: CarEvent & { readonly part: string },
  state: PartRow['state'],
  piece: number,
  component: ComponentRow | null,
): Car => {
  const { part, meta } = event;
  const before = car.parts[part];
  const isAsBefore = (before?.state ?? 'absent') === state && (before?.piece ?? 1) === piece;
  return {
    ...car,
    parts: isAsBefore
      ? car.parts
      : { ...car.parts, [part]: { state, piece, run: null, takenFor: null, by: meta.by, at: meta.at } },
    components: component === null ? car.components : { ...car.components, [part]: component },
  };
};

export const donorRecorded = (car: Car, event: Of<'donor-recorded'>): Car => {
  const { year, model, number, mileage, from, came, meta } = event;
  return { ...car, donor: { year, model, number, mileage, from, came, by: meta.by, at: meta.at } };
};

const fresh = (piece: number, { meta }: CarEvent): ComponentRow => ({
  piece,
  grade: null,
  place: null,
  serial: null,
  note: null,
  from: null,
  outings: [],
  by: meta.by,
  at: meta.at,
});

/** What is known of this piece; of another one nothing is. */
const ofPiece = (car: Car, part: string, piece: number, event: CarEvent): ComponentRow => {
  const row = car.components[part];
  return row?.piece === piece ? row : fresh(piece, event);
};

export const partGraded = (car: Car, event: Of<'part-graded'>): Car => {
  const { part, piece, grade, place, serial, note, state, meta } = event;
  const row = ofPiece(car, part, piece, event);
  const said = { grade, place, serial, note, by: meta.by, at: meta.at };
  // Whoever grades it otherwise does not believe the look before.
  return put(car, event, state, piece, { ...(grade === row.grade ? row : unlooked(row)), ...said });
};

export const partSent = (car: Car, event: Of<'part-sent'>): Car => {
  const { part, piece, trip, work, due, meta } = event;
  const row = ofPiece(car, part, piece, event);
  const outing: Outing = { trip, work, due, sentBy: meta.by, sentAt: meta.at, back: null, looked: null };
  return put(car, event, 'out', piece, {
    ...row,
    grade: row.grade ?? 'refurbish',
    outings: [...row.outings, outing],
  });
};

/** Done, it waits for a look; otherwise it is here as it went. */
export const partReturned = (car: Car, event: Of<'part-returned'>): Car => {
  const { part, how, note, meta } = event;
  const row = car.components[part];
  return row === undefined
    ? car
    : put(
        car,
        event,
        how === 'done' ? 'back' : 'absent',
        row.piece,
        onLast(row, (outing) => ({ ...outing, back: { how, note, by: meta.by, at: meta.at } })),
      );
};

export const partReceived = (car: Car, event: Of<'part-received'>): Car => {
  const { part, piece, from, serial, looked, meta } = event;
  const said = { by: meta.by, at: meta.at };
  const row = ofPiece(car, part, piece, event);
  const seen = looked === undefined ? row : withLook(row, { text: looked, ...said });
  const isTold = from !== undefined || serial !== undefined || looked !== undefined;
  const component: ComponentRow = {
    ...seen,
    ...(from === undefined ? {} : { from, grade: 'reuse', ...said }),
    serial: serial ?? seen.serial,
  };
  return put(car, event, 'present', piece, isTold ? component : null);
};

/** Of the outing that it is back from, else of the part as it came off the donor. */
const withLook = (row: ComponentRow, looked: Look): ComponentRow => {
  const outing = lastOuting(row);
  return outing?.back?.how === 'done' && outing.looked === null
    ? onLast(row, (each) => ({ ...each, looked }))
    : { ...row, looked };
};

const unlooked = (row: ComponentRow): ComponentRow => {
  const { looked: _, ...rest } = row;
  return rest;
};

const onLast = (row: ComponentRow, change: (outing: Outing) => Outing): ComponentRow => {
  const last = lastOuting(row);
  return last === undefined ? row : { ...row, outings: [...row.outings.slice(0, -1), change(last)] };
};
