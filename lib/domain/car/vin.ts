/**
 * What may be amiss with a vehicle identification number as it was typed. Never a reason to refuse it: what is stamped is
 * stamped, and older cars carry their maker's own.
 *
 * ISO 3779:2009: 17 characters, capital letters but I, O and Q, and figures. The check digit in the ninth place is no part of
 * ISO 3779; it is asked for in North America (49 CFR 565.15 (c)), so that elsewhere a wrong one says little.
 */

export type VinDoubt =
  /** ISO 3779 asks for 17. */
  | { readonly kind: 'length'; readonly length: number }
  /** Characters that no such number holds. */
  | { readonly kind: 'characters'; readonly characters: readonly string[] }
  /** North American arithmetic gives another one. */
  | { readonly kind: 'check-digit'; readonly stands: string; readonly expected: string };

const LENGTH = 17;
const CHECK_PLACE = 8;

/** 49 CFR 565.15, table III: what counts as 0, as 1, as 2 …; I, O and Q count as nothing. */
const ROWS = ['0', '1AJ', '2BKS', '3CLT', '4DMU', '5ENV', '6FW', '7GPX', '8HY', '9RZ'] as const;

const figureOf = (character: string): number => ROWS.findIndex((row) => row.includes(character));

/** Table IV: the weight of each place; the check digit's own is 0. */
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

/** The first model year that had to carry such a number in most of the world. */
const SINCE = 1981;

/** Spaces and hyphens between groups are how people write it, not part of it. */
const plain = (text: string): string => text.toUpperCase().replace(/[\s-]/gu, '');

/** Everything that is odd about it. `year`: of a car too old to have one, nothing is. */
export const vinDoubts = (text: string, year: number | null): readonly VinDoubt[] => {
  const vin = plain(text);
  if (vin === '' || (year !== null && year < SINCE)) return [];
  if (vin.length !== LENGTH) return [{ kind: 'length', length: vin.length }];
  const characters = [...new Set(vin)].filter((each) => figureOf(each) < 0);
  if (characters.length > 0) return [{ kind: 'characters', characters }];
  const sum = WEIGHTS.reduce<number>((total, weight, at) => total + weight * figureOf(vin.charAt(at)), 0);
  const rest = sum % 11;
  const expected = rest === 10 ? 'X' : String(rest);
  const stands = vin.charAt(CHECK_PLACE);
  return stands === expected ? [] : [{ kind: 'check-digit', stands, expected }];
};

export const vinDoubtWords = (doubt: VinDoubt): string => {
  switch (doubt.kind) {
    case 'length':
      return `It has ${String(doubt.length)} characters; since ${String(SINCE)} they have 17 (ISO 3779). Right for an older car: give its year.`;
    case 'characters':
      return `${doubt.characters.join(', ')} ${doubt.characters.length === 1 ? 'stands' : 'stand'} in no such number (ISO 3779): look at the plate again, I for 1, O or Q for 0.`;
    case 'check-digit':
      return `The ninth character is ${doubt.stands}, and by the rest it would be ${doubt.expected}. On a car built for North America one of them was misread; others need no check digit.`;
  }
};
