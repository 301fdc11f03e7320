/** What the sign-in page gets. */

export interface SignInPerson {
  readonly id: string;
  readonly name: string;
  readonly initials: string;
  readonly comesBy: 'desk' | 'bench';
  readonly says: string;
}

export interface TabletView {
  /** `demo`: not enrolled, but the demo shop takes every browser on its own machine for a tablet. */
  readonly standing: 'tablet' | 'demo' | 'unknown' | 'revoked';
  readonly name: string | null;
  /** By whom and when it was enrolled. */
  readonly says: string;
  readonly minutes: number;
}

export interface SignInView {
  readonly shop: string;
  readonly at: 'desk' | 'bench';
  readonly people: readonly SignInPerson[];
  readonly tablet: TabletView;
  /** Who can enrol this browser. */
  readonly owners: readonly string[];
  /** The named person's password or PIN rests on this device. */
  readonly rest: { readonly seconds: number; readonly until: string } | null;
}
