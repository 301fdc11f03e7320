/** The shop's own rows: people, tools, lots. Plans are documents and come in beside it. */
import type { Day, Instant, Key, LotId, PersonId, Role, ToolId } from '@/lib/domain/base/vocabulary';
import { NO_SUPPLY } from './offer-rows';
import type { SupplyRows } from './offer-rows';
import type { RemnantRow } from './remnants';
import type { SawnRows } from './sawn';
import type { HourRates } from './rates';
import type { OffDonor } from '@/lib/domain/car/hardware';
import type { Adapter, Tool } from '@/lib/domain/torque/tool';

export interface Qualification {
  readonly key: Key;
  /** First and last day on which it holds, both inclusive; absent = no end. */
  readonly from?: Day;
  readonly until?: Day;
}

/** Nothing of that name counts after the last day, whatever was recorded before. */
export interface QualificationEnd {
  readonly person: PersonId;
  readonly key: Key;
  readonly last: Day;
}

export interface FormerName {
  readonly name: string;
  /** From this moment on it was another. */
  readonly until: Instant;
}

export interface Person {
  readonly id: PersonId;
  readonly name: string;
  /** What they were called before, the earliest first; absent = never anything else. */
  readonly formerly?: readonly FormerName[];
  readonly roles: readonly Role[];
  readonly qualifications: readonly Qualification[];
  readonly left: boolean;
}

export interface Lot {
  readonly id: LotId;
  readonly item: Key;
  readonly quantity: number;
  readonly certificate: string | null;
  readonly certificateAsked: boolean;
  /** Last day on which it may be fitted. */
  readonly expires: Day | null;
  /** Why it is kept apart; null = good. */
  readonly quarantined: string | null;
  readonly receivedAt: Instant;
  /** Where it lies, if elsewhere than the item usually does. */
  readonly bin?: string;
  /** The order it came with, and what one of its unit cost, in the smallest unit of money; decimal text. */
  readonly order?: string;
  readonly cost?: string;
  /** Absent: it came in new. */
  readonly donor?: OffDonor;
}

/** Where an item lies, number then letter: `09C`. */
export interface Bin {
  readonly bin: string;
}

/** A plan revision that cars may be begun on; its document is kept beside the shop, under the same hash. */
export interface ReleasedPlan {
  readonly model: string;
  readonly revision: string;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface Shop extends SupplyRows {
  readonly version: number;
  readonly people: Readonly<Record<PersonId, Person>>;
  readonly tools: Readonly<Record<ToolId, Tool>>;
  readonly adapters: Readonly<Record<string, Adapter>>;
  readonly lots: Readonly<Record<LotId, Lot>>;
  /** By item. */
  readonly bins: Readonly<Record<Key, Bin>>;
  /** By item. */
  readonly remnants: Readonly<Record<Key, RemnantRow>>;
  readonly sawn: SawnRows;
  /** By hash. */
  readonly plans: Readonly<Record<string, ReleasedPlan>>;
  readonly rates: HourRates;
}

export const EMPTY_SHOP: Shop = {
  version: 0,
  people: {},
  tools: {},
  adapters: {},
  lots: {},
  bins: {},
  remnants: {},
  sawn: {},
  plans: {},
  rates: {},
  ...NO_SUPPLY,
};

/** Does the person hold this qualification on that day? `null` asks for none. */
export const isQualified = (person: Person, qualification: Key | null, day: Day): boolean =>
  qualification === null ||
  person.qualifications.some(
    ({ key, from, until }) =>
      key === qualification && (from === undefined || from <= day) && (until === undefined || day <= until),
  );

/** What somebody was called at that moment: what was signed under a name stays signed under it. */
export const nameAt = ({ name, formerly = [] }: Person, at: Instant): string =>
  formerly.find(({ until }) => at < until)?.name ?? name;

/** None of that name goes beyond the day; one that would only have begun after it is gone. */
export const endedAfter = (held: readonly Qualification[], key: Key, last: Day): readonly Qualification[] =>
  held.flatMap((each) => {
    if (each.key !== key || (each.until !== undefined && each.until <= last)) return [each];
    return each.from !== undefined && each.from > last ? [] : [{ ...each, until: last }];
  });

/** Where to reach for it: the lot's own bin, else that of the item; null = nobody has said. */
export const binOf = (
  { bins, lots }: Pick<Shop, 'bins' | 'lots'>,
  item: Key,
  lot: LotId | null,
): string | null => (lot === null ? undefined : lots[lot]?.bin) ?? bins[item]?.bin ?? null;
