/** How each donor was found: what is usual, but for what this one had. Places, numbers and faults are invented. */
import type { Key } from '@/lib/domain/base/vocabulary';
import type { Graded } from '@/lib/domain/component-claims';
import type { CarWork } from './car-work';

/** Where things lie: shelves of the donor rack, four to a bay; what no shelf takes. */
const BIG: Readonly<Record<Key, string>> = {
  'P-01': 'floor, bay 3',
  'P-17': 'floor, bay 3',
  'P-22': 'floor, bay 4',
  'P-29': 'long rack',
  'P-30': 'long rack',
  'P-19': 'long rack',
};
const SHELVES = 'ABCD';

const placeOf = (part: Key, index: number): string =>
  BIG[part] ?? `${String(1 + Math.floor(index / SHELVES.length))}${SHELVES[index % SHELVES.length] ?? 'A'}`;

/** One list, as it was walked through with a tablet. */
export const gradeDonor = (
  work: CarWork,
  by: string,
  unusual: Readonly<Record<Key, Omit<Graded, 'part'>>>,
): void => {
  const { plan } = work.site();
  const donor = Object.entries(plan.document.parts ?? {}).filter(([, { origin }]) => origin === 'donor');
  const parts = donor.map(([part, { grade }], index): Graded => {
    const place = placeOf(part, index);
    return { part, ...(grade === undefined ? {} : { grade }), place, ...unusual[part] };
  });
  work.say(by, { type: 'grade-parts', parts });
};
