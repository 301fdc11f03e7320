/** How each donor was found: what is usual, but for what this one had. Places, numbers, faults and vehicles are invented. */
import type { Key } from '@/lib/domain/base/vocabulary';
import type { DonorTold, Graded } from '@/lib/domain/component-claims';
import type { KeptLine } from '@/lib/domain/donor-claims';
import { DEMO_LEAD } from '@/seed/demo-shop';
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

/** What the plan has looked over before it counts as here, and what there was to see. */
const LOOKS: Readonly<Record<Key, string>> = {
  'P-24': 'degreased; no crack in the dye, splines whole, run-out 0.08',
  'P-33': 'blasted; dye at the steering arm and the spindle root: no crack',
  'P-43': 'splines whole, no play; rubber disc without a crack',
};

interface Found {
  readonly vehicle: Omit<DonorTold, 'came'>;
  readonly unusual: Readonly<Record<Key, Omit<Graded, 'part'>>>;
  /** What nobody has got round to looking over. */
  readonly waits?: readonly Key[];
  readonly hardware?: readonly KeptLine[];
}

/** One list, as it was walked through with a tablet; then what wanted a look, cleaned; then the tins of hardware. */
export const gradeDonor = (
  work: CarWork,
  by: string,
  { vehicle, unusual, waits = [], hardware = [] }: Found,
): void => {
  const { plan, day } = work.site();
  work.say(DEMO_LEAD, { type: 'record-donor', ...vehicle, came: day });
  const donor = Object.entries(plan.document.parts ?? {}).filter(([, { origin }]) => origin === 'donor');
  const parts = donor.map(([part, { grade }], index): Graded => {
    const place = placeOf(part, index);
    return { part, ...(grade === undefined ? {} : { grade }), place, ...unusual[part] };
  });
  work.say(by, { type: 'grade-parts', parts });
  for (const [part, looked] of Object.entries(LOOKS))
    if (!waits.includes(part)) work.say(by, { type: 'receive-part', part, looked });
  if (hardware.length > 0)
    work.floor.driver.must(by, { type: 'keep-donor-hardware', donorOf: work.car, lines: hardware });
};
