/** Joints: fitted, marked, opened, doubted. A cycle's marks are kept, the struck ones too. */
import { UNTOUCHED_JOINT, standingBy } from '@/lib/domain/car/joint';
import type { FastenerRow, FittedItem, JointRow } from '@/lib/domain/car/joint-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

const change = (car: Car, joint: string, by: (row: JointRow) => Partial<JointRow>): Car => {
  const row = car.joints[joint] ?? UNTOUCHED_JOINT;
  return { ...car, joints: { ...car.joints, [joint]: { ...row, ...by(row) } } };
};

export const hardwareFitted = (car: Car, event: Of<'hardware-fitted'>): Car =>
  change(car, event.joint, (row) => withLots({ ...row.fasteners, ...event.fasteners }));

/**
 * A piece that is spent promises nothing any more. Sorted, since the order of the fasteners' keys is nobody's promise: a
 * store gives them back in its own.
 */
const withLots = (fasteners: JointRow['fasteners']): Pick<JointRow, 'fasteners' | 'lots'> => {
  const lots = Object.values(fasteners).flatMap((items) =>
    Object.values(items).flatMap(({ lot, spent }) => (lot === null || spent ? [] : [lot])),
  );
  return { fasteners, lots: [...new Set(lots)].sort() };
};

export const jointMarked = (car: Car, event: Of<'joint-marked'>): Car =>
  change(car, event.joint, (row) => ({
    ...withMarks([...row.marks, event.mark]),
    doubts: event.doubtsLeft,
  }));

const withMarks = (marks: JointRow['marks']): Pick<JointRow, 'marks' | 'level' | 'tool'> => ({
  marks,
  ...standingBy(marks),
});

export const jointRechecked = (car: Car, event: Of<'joint-rechecked'>): Car =>
  change(car, event.joint, (row) => ({
    doubts: event.doubtsLeft,
    rechecks: [
      ...row.rechecks,
      {
        signature: event.meta.command,
        by: event.meta.by,
        at: event.meta.at,
        tool: event.tool,
        run: event.run,
        cleared: event.cleared,
        struck: false,
      },
    ],
  }));

/** A new cycle wherever anything was done in the old one; doubts about what is gone are gone, but for over-torque. */
export const jointOpened = (car: Car, event: Of<'joint-opened'>): Car =>
  change(car, event.joint, (row) => ({
    cycle: event.cycle,
    ...withMarks(event.cycle === row.cycle ? row.marks : []),
    rechecks: event.cycle === row.cycle ? row.rechecks : [],
    doubts: row.doubts.filter(
      (doubt) =>
        doubt.cause === 'over-torque' &&
        (doubt.fasteners ?? []).some((fastener) => !event.fasteners.includes(fastener)),
    ),
    ...withLots(loosened(row, event)),
    opened: { at: event.meta.at, by: event.meta.by, run: event.run, was: event.was },
  }));

const loosened = (row: JointRow, event: Of<'joint-opened'>): JointRow['fasteners'] => {
  const found: Record<string, FastenerRow> = {};
  for (const [place, items] of Object.entries(row.fasteners)) {
    const isOpened = place === 'joint' || event.fasteners.includes(Number(place));
    found[place] = isOpened
      ? mapItems(items, (item, piece) => asLoose(piece, event.spent[place] ?? [], item))
      : items;
  }
  return found;
};

const asLoose = (piece: FittedItem, spent: readonly string[], item: string): FittedItem => ({
  ...piece,
  spent: piece.spent || spent.includes(item),
  loose: true,
});

const mapItems = (items: FastenerRow, by: (item: string, piece: FittedItem) => FittedItem): FastenerRow =>
  Object.fromEntries(Object.entries(items).map(([item, piece]) => [item, by(item, piece)]));

export const jointDoubted = (car: Car, event: Of<'joint-doubted'>): Car =>
  change(car, event.joint, (row) => ({
    doubts: row.doubts.some(
      (doubt) => doubt.cause === event.doubt.cause && doubt.because === event.doubt.because,
    )
      ? row.doubts
      : [...row.doubts, event.doubt],
  }));

/** The reading is in the log; the row keeps the doubt that comes with it as an event of its own. */
export const overTorqued = (car: Car, event: Of<'joint-over-torqued'>): Car =>
  change(car, event.joint, () => ({}));

export const markStruck = (car: Car, event: Of<'mark-struck'>): Car =>
  change(car, event.joint, (row) => ({
    ...withMarks(
      row.marks.map((mark) => (event.signatures.includes(mark.signature) ? { ...mark, struck: true } : mark)),
    ),
    rechecks: row.rechecks.map((recheck) =>
      event.signatures.includes(recheck.signature) ? { ...recheck, struck: true } : recheck,
    ),
    doubts: [...row.doubts, ...event.doubtsBack],
  }));
