import type { ReactNode } from 'react';
import type { Desk } from './use-desk';

/** What each kind of work on the sheet is given. */
export interface Work {
  readonly desk: Desk;
  readonly notes: {
    /** Drafts. */
    readonly above: ReactNode;
    /** What came of the last signing. */
    readonly below: ReactNode;
  };
  /** Opens the question which were loosened, with these in it already. */
  readonly onOpened: (fasteners: readonly number[], reason: string) => void;
  /** What is photographed goes with the signature; stands beside its key. */
  readonly photoNote: ReactNode;
  /** The way to another act that is offered, under the signing key. */
  readonly onOther: ReactNode;
}
