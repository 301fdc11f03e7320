/** A part with a history of its own: how the donor's was found, where it lies, where it has been. */
import type { CarId, Day, Instant, PersonId } from '@/lib/domain/base/vocabulary';

/** What is done with a donor's part. Reuse: as it is. Refurbish: once it was worked on. The others bring a new one. */
export const GRADES = ['reuse', 'refurbish', 'replace', 'scrap'] as const;
export type Grade = (typeof GRADES)[number];

/** Is another one bought instead? */
export const isGivenUp = (grade: Grade | null): boolean => grade === 'replace' || grade === 'scrap';

/** How a part came back from outside work. */
export const OUTCOMES = ['done', 'not-done', 'damaged'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** One time that it was out of the house. */
export interface Outing {
  readonly trip: string;
  /** What is to be done there. */
  readonly work: string;
  readonly due: Day;
  readonly sentBy: PersonId;
  readonly sentAt: Instant;
  readonly back: {
    readonly how: Outcome;
    readonly note: string | null;
    readonly by: PersonId;
    readonly at: Instant;
  } | null;
  /** The look after it came back, without which it does not count as here. */
  readonly looked: Look | null;
}

/** What was looked at, and by whom. */
export interface Look {
  readonly text: string;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface ComponentRow {
  /** Which piece of the part all of this is about, as `PartRow.piece`. */
  readonly piece: number;
  /** Null: nobody has said. */
  readonly grade: Grade | null;
  /** Where it lies, as the shop calls the place. */
  readonly place: string | null;
  readonly serial: string | null;
  /** How it was found, in a few words. */
  readonly note: string | null;
  /** The car that it was taken off; null = this car's own donor, or bought. */
  readonly from: CarId | null;
  /** The look after which one that was graded reuse counts as here, where the plan asks for one. */
  readonly looked?: Look;
  /** The last one is where it is now, or came back from. */
  readonly outings: readonly Outing[];
  readonly by: PersonId;
  readonly at: Instant;
}

/** Where it is out at, or came back from and was not looked over yet. */
export const lastOuting = (row: ComponentRow | undefined): Outing | undefined => row?.outings.at(-1);
