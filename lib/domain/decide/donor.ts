/** The donor's identity: recorded, and corrected by whoever read its plates again. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { NO_DONOR_FACTS } from '@/lib/domain/car/donor-identity';
import type { DonorFacts } from '@/lib/domain/car/donor-identity';
import type { RecordDonor } from '@/lib/domain/component-claims';
import { unless } from './case';
import type { Case, Decision } from './case';

/** A year must be one and a day must be one; a number that looks wrong is kept as it was read (`vinDoubts`). */
export const recordDonor = ({ car }: Case, claim: RecordDonor): Decision => {
  const before: DonorFacts = car.donor ?? NO_DONOR_FACTS;
  const refusals: Refusal[] = [];
  const told = (text: string | undefined, was: string | null): string | null =>
    text === undefined ? was : text.trim() === '' ? null : text.trim();
  const shaped = (field: 'year' | 'came', shape: RegExp, wanted: string): string | null => {
    const text = told(claim[field], null);
    if (text !== null && !shape.test(text))
      refusals.push(refuse('value-unreadable', { field, text, wanted }));
    return text;
  };
  const year = shaped('year', /^(?:18|19|20)\d\d$/u, 'a year, like 1967');
  const came = shaped('came', /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/u, 'a day, like 2026-03-02');
  const next: DonorFacts = {
    year: claim.year === undefined ? before.year : year === null ? null : Number(year),
    model: told(claim.model, before.model),
    number: told(claim.number, before.number),
    mileage: told(claim.mileage, before.mileage),
    from: told(claim.from, before.from),
    came: claim.came === undefined ? before.came : came,
  };
  const isSame =
    next.year === before.year &&
    next.model === before.model &&
    next.number === before.number &&
    next.mileage === before.mileage &&
    next.from === before.from &&
    next.came === before.came;
  return unless(refusals, () => (isSame ? [] : [{ type: 'donor-recorded', ...next }]));
};
