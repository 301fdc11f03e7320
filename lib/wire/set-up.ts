/** What the few posts of the set-up take and answer that are no commands: links, rests, plan texts. */
import type { LocatedProblem } from './read-plan';

/** What every one of them may answer instead. */
export type SetUpRefused =
  | { readonly outcome: 'bad-input'; readonly says: string }
  | { readonly outcome: 'not-allowed'; readonly says: string }
  | { readonly outcome: 'not-signed-in'; readonly says: string }
  | { readonly outcome: 'refused'; readonly says: string };

export const SET_UP_STATUS: Readonly<Record<SetUpRefused['outcome'], number>> = {
  'bad-input': 400,
  'not-allowed': 403,
  'not-signed-in': 401,
  refused: 409,
};

/** `POST /api/set-up/enrolments` `{ person }`: a link for setting a password and a PIN, good once. */
export type LinkAnswer =
  | { readonly outcome: 'made'; readonly link: string; readonly until: string }
  | SetUpRefused;

/** `POST /api/set-up/rests` `{ person }`: whoever guessed wrong too often may try again. */
export type LiftAnswer = { readonly outcome: 'lifted' } | SetUpRefused;

/** `POST /api/set-up/shop`: what it is called, and the time zone of its calendar. */
export interface ShopRequest {
  readonly name: string;
  readonly zone: string;
}

export type ShopAnswer = { readonly outcome: 'done' } | SetUpRefused;

/** `POST /api/set-up/tablets`: this browser or another one becomes a tablet of the shop, or is one no longer. */
export type TabletRequest =
  | { readonly act: 'enrol-this'; readonly name: string; readonly minutes: number }
  | { readonly act: 'make-code'; readonly name: string; readonly minutes: number }
  | { readonly act: 'change'; readonly device: string; readonly name: string; readonly minutes: number }
  | { readonly act: 'revoke'; readonly device: string };

export type TabletAnswer =
  | { readonly outcome: 'done' }
  | { readonly outcome: 'made'; readonly code: string; readonly link: string; readonly until: string }
  | SetUpRefused;

export interface PlanLook {
  readonly model: string;
  readonly revision: string;
  readonly stages: number;
  readonly operations: number;
  readonly joints: number;
  readonly checks: number;
  readonly items: number;
}

/** `POST /api/set-up/plans` `{ text, keep }`: reads a plan; with `keep` it is kept, so that it can be released. */
export type PlanAnswer =
  | {
      readonly outcome: 'read';
      /** Null: it can't be read as a plan. */
      readonly look: PlanLook | null;
      readonly problems: readonly LocatedProblem[];
      /** Its name for `release-plan`, once it is kept. */
      readonly hash: string | null;
    }
  | SetUpRefused;
