/** The event that a person signs carries what it is a signature for; the register of signatures follows from it. */
import type { Car } from '@/lib/domain/car/rows';
import type { CarEvent } from '@/lib/domain/events';

export const signed = (car: Car, event: CarEvent): Car => {
  if (!('signed' in event)) return car;
  // As what it was signed stays in the log: no rule asks for it.
  const { act, subject, number } = event.signed;
  const row = { act, subject, number, by: event.meta.by, at: event.meta.at, struck: null };
  return { ...car, signatures: { ...car.signatures, [event.meta.command]: row } };
};
