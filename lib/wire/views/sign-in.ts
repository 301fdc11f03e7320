/** What the sign-in page gets. */

export interface SignInPerson {
  readonly id: string;
  readonly name: string;
  readonly initials: string;
  readonly comesBy: 'desk' | 'bench';
  readonly says: string;
}

export interface SignInView {
  readonly shop: string;
  readonly at: 'desk' | 'bench';
  readonly people: readonly SignInPerson[];
  /** The named person's password or PIN rests on this device. */
  readonly rest: { readonly seconds: number; readonly until: string } | null;
}
