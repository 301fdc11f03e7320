/** Stopgaps, conditions, parts, holds, struck signatures. */
import type { Car, PartRow, StopgapRow } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

type Of<Type extends CarEvent['type']> = Extract<CarEvent, { type: Type }>;

export const stopgapPlaced = (car: Car, event: Of<'stopgap-placed'>): Car => ({
  ...car,
  stopgaps: {
    ...car.stopgaps,
    [event.id]: {
      stopgap: event.stopgap,
      what: event.what,
      placed: event.quantity,
      removed: 0,
      removals: {},
      outBy: event.outBy,
      slaveIn: event.slaveIn,
      where: event.where,
      by: event.meta.by,
      at: event.meta.at,
    },
  },
});

export const stopgapRemoved = (car: Car, event: Of<'stopgap-removed'>): Car =>
  onStopgap(car, event.id, (row) => ({
    ...row,
    removed: row.removed + event.quantity,
    removals: { ...row.removals, [event.meta.command]: event.quantity },
  }));

export const stopgapReturned = (car: Car, event: Of<'stopgap-returned'>): Car =>
  onStopgap(car, event.id, (row) => ({
    ...row,
    removed: row.removed - event.quantity,
    removals: { ...row.removals, [event.signature]: 0 },
  }));

const onStopgap = (car: Car, id: string, change: (row: StopgapRow) => StopgapRow): Car => {
  const row = car.stopgaps[id];
  return row === undefined ? car : { ...car, stopgaps: { ...car.stopgaps, [id]: change(row) } };
};

export const conditionChanged = (car: Car, event: Of<'condition-set' | 'condition-cleared'>): Car => ({
  ...car,
  conditions: {
    ...car.conditions,
    [event.condition]: {
      value: event.type === 'condition-set',
      run: event.run,
      at: event.meta.at,
      by: event.meta.by,
      because: event.because,
    },
  },
});

export const partChanged = (
  car: Car,
  event: Of<'part-fitted' | 'part-unfitted' | 'part-taken' | 'part-condemned'>,
): Car => {
  const row = car.parts[event.part];
  const base = { run: null, takenFor: null, by: event.meta.by, at: event.meta.at };
  const next = ((): PartRow => {
    switch (event.type) {
      case 'part-fitted':
        return { ...base, state: 'fitted', piece: row?.piece ?? 1, run: event.run };
      case 'part-unfitted':
        return { ...base, state: 'present', piece: row?.piece ?? 1 };
      case 'part-taken':
        return { ...base, state: 'taken', piece: row?.piece ?? 1, takenFor: event.takenFor };
      case 'part-condemned':
        return { ...base, state: 'absent', piece: event.piece };
    }
  })();
  return { ...car, parts: { ...car.parts, [event.part]: next } };
};

export const holdPlaced = (car: Car, event: Of<'hold-placed'>): Car => ({
  ...car,
  holds: {
    ...car.holds,
    [event.hold]: {
      scope: event.scope,
      things: event.things,
      reason: event.reason,
      by: event.meta.by,
      at: event.meta.at,
      releasedBy: null,
    },
  },
});

export const holdReleased = (car: Car, event: Of<'hold-released'>): Car => {
  const row = car.holds[event.hold];
  return row === undefined
    ? car
    : { ...car, holds: { ...car.holds, [event.hold]: { ...row, releasedBy: event.meta.by } } };
};

export const signatureStruck = (car: Car, event: Of<'signature-struck'>): Car => {
  const row = car.signatures[event.signature];
  const struck = { by: event.meta.by, reason: event.reason, at: event.meta.at };
  return row === undefined
    ? car
    : { ...car, signatures: { ...car.signatures, [event.signature]: { ...row, struck } } };
};
