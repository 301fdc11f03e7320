/** Which vehicle the donor was, as its plates and papers have it. */
import type { Day, Instant, PersonId } from '@/lib/domain/base/vocabulary';

/** Texts as they were typed; null = nobody has said. */
export interface DonorFacts {
  readonly year: number | null;
  /** Make and model. */
  readonly model: string | null;
  /** Chassis number or VIN, as stamped. */
  readonly number: string | null;
  /** As it was told, with its unit: `71,400 miles`. */
  readonly mileage: string | null;
  /** Who or where it came from. */
  readonly from: string | null;
  readonly came: Day | null;
}

export interface DonorRow extends DonorFacts {
  readonly by: PersonId;
  readonly at: Instant;
}

export const NO_DONOR_FACTS: DonorFacts = {
  year: null,
  model: null,
  number: null,
  mileage: null,
  from: null,
  came: null,
};

/** `1967 Dunmore 1800, number DS-04417`; empty where nobody has said what it was. */
export const donorWords = ({ year, model, number }: DonorFacts): string =>
  [
    [year === null ? '' : String(year), model ?? ''].filter((word) => word !== '').join(' '),
    number === null ? '' : `number ${number}`,
  ]
    .filter((word) => word !== '')
    .join(', ');
