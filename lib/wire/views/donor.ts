/** What the page of a donor is given: each part as it is expected and as it was found. */
import type { Grade } from '@/lib/domain/car/component-rows';

export interface DonorPartLine {
  readonly key: string;
  readonly name: string;
  readonly isCritical: boolean;
  readonly lookedAt: string;
  /** What the plan expects; null = it does not say. */
  readonly usual: Grade | null;
  readonly grade: Grade | null;
  readonly place: string;
  readonly serial: string;
  readonly note: string;
  /** Where it stands, if its grade alone does not say it: fitted, out, taken. */
  readonly stands: string;
  /** A grade may still be given. */
  readonly isOpen: boolean;
}

export interface DonorNeed {
  readonly key: string;
  readonly name: string;
  readonly says: string;
  /** The plan did not expect it. */
  readonly isUnusual: boolean;
}

export interface DonorView {
  readonly car: { readonly id: string; readonly chassis: string; readonly colour: string | null };
  readonly says: string;
  readonly parts: readonly DonorPartLine[];
  readonly need: readonly DonorNeed[];
  /** What was graded so that it goes out, and has not been. */
  readonly toSend: readonly { readonly key: string; readonly name: string; readonly days: string }[];
  readonly findings: readonly { readonly id: string; readonly text: string; readonly href: string }[];
}
