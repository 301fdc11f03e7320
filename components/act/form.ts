/** What a form of an act is: made from the act, what the desk knows, and what has been filled in so far. */
import type { ActRef, CarClaimType, CheckValue, Desk } from '@/lib/wire/views/desk';
import type { CarClaim } from '@/lib/domain/commands';
import type { HardwareView } from '@/lib/wire/views/sign-off';

/** Everything typed is text; several of one name are a list. */
export type Values = Readonly<Record<string, string | readonly string[]>>;

export interface Option {
  readonly value: string;
  readonly label: string;
  readonly hint?: string;
  /** Why it can't be chosen. */
  readonly barred?: string;
  /** What choosing it would bring, shown once it is chosen. */
  readonly brings?: readonly string[];
}

export interface OptionGroup {
  readonly label: string;
  readonly options: readonly Option[];
}

interface Named {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
}

export type FieldSpec =
  | (Named & { readonly kind: 'text'; readonly wanted: boolean; readonly picks?: readonly string[] })
  | (Named & {
      readonly kind: 'count';
      readonly least: number;
      readonly most: number;
      readonly start: number;
    })
  | (Named & { readonly kind: 'choice'; readonly options: readonly Option[]; readonly start?: string })
  /** One of many, in a list that the device knows how to show. */
  | (Named & { readonly kind: 'pick'; readonly groups: readonly OptionGroup[]; readonly wanted: boolean })
  | (Named & {
      readonly kind: 'many';
      readonly options: readonly Option[];
      readonly start: readonly string[];
    })
  | (Named & { readonly kind: 'fasteners'; readonly numbers: readonly number[] })
  | (Named & { readonly kind: 'value'; readonly value: CheckValue })
  | (Named & { readonly kind: 'hardware'; readonly line: HardwareView })
  | (Named & {
      readonly kind: 'cautions';
      readonly cautions: readonly { readonly hazard: string; readonly text: string }[];
    })
  | (Named & {
      readonly kind: 'clock';
      readonly begunAt: string;
      readonly holdsMs: number;
      readonly by: string;
    })
  /** `act`: what they wait under on the device until it is accepted. */
  | (Named & { readonly kind: 'photo'; readonly most: number; readonly act: string });

export interface FormSpec {
  /** What the act is; stands over the form. */
  readonly title: string;
  readonly button: string;
  /** Giving free weighs less than holding back; `stop` holds something back. */
  readonly tone: 'main' | 'plain' | 'stop';
  readonly fields: readonly FieldSpec[];
  /** What is said by pressing the button, in words: the PIN is asked under it. */
  readonly says: string;
  /** What it would bring, as far as it is known before. */
  readonly brings: readonly string[];
  /** What is still missing before it can be given; null = nothing. */
  readonly missing: string | null;
  /** It can't be given before this instant. */
  readonly readyAt?: string;
  readonly claim: () => CarClaim;
}

export type FormOf = (act: ActRef, desk: Desk, values: Values) => FormSpec;
export type FormTable = Readonly<Record<CarClaimType, FormOf | null>>;

export const text = (values: Values, name: string): string => {
  const value = values[name];
  return typeof value === 'string' ? value.trim() : '';
};

export const list = (values: Values, name: string): readonly string[] => {
  const value = values[name];
  return value === undefined || typeof value === 'string' ? [] : value;
};

/** A reason where one was given. */
export const optional = <Name extends string>(
  name: Name,
  value: string,
): { readonly [Key in Name]?: string } =>
  (value === '' ? {} : { [name]: value }) as { readonly [Key in Name]?: string };

/** `J-511 Gearbox cross-member`. */
export const called = (key: string, name: string | undefined): string =>
  name === undefined || name === '' || name.startsWith(key) ? (name ?? key) : `${key} ${name}`;

/** A reason that is kept for good. */
export const reasonField = (label: string, picks?: readonly string[]): FieldSpec => ({
  kind: 'text',
  name: 'reason',
  label,
  wanted: true,
  ...(picks === undefined ? {} : { picks }),
});
