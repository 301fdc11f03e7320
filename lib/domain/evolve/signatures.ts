/** The event that a person signs carries what it is a signature for; the register of signatures follows from it. */
import type { Car } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

export const signed = (car: Car, event: CarEvent): Car =>
  'signed' in event
    ? {
        ...car,
        signatures: {
          ...car.signatures,
          [event.meta.command]: { ...event.signed, by: event.meta.by, at: event.meta.at, struck: null },
        },
      }
    : car;
