/** What the sentences are made of. */
import type { RefusalCode, RefusalDetails } from './refusals';
import type { PersonId } from './vocabulary';

/** The plan's name for a key, the shop's for a person; null where it has none. */
export type NameOf = (key: string) => string | null;

/** `steering box to bracket (J-212)`: the name as one says it, and the key behind. */
export type Called = (key: string) => string;

/** `Ines Harrow`: a person is called by name alone; their id is nobody's word for them. */
export type Who = (person: PersonId) => string;

export type Sentences<Code extends RefusalCode> = {
  readonly [Each in Code]: (details: Readonly<RefusalDetails[Each]>, called: Called, who: Who) => string;
};

/** `a`, `a or b`, `a, b or c`. */
export const either = (words: readonly string[]): string => joined(words, 'or');

/** `a`, `a and b`, `a, b and c`. */
export const all = (words: readonly string[]): string => joined(words, 'and');

const joined = (words: readonly string[], last: string): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1) ?? ''}`;

/** `1 joint`, `3 joints`. */
export const counted = (count: number, word: string): string =>
  `${String(count)} ${word}${count === 1 ? '' : 's'}`;

/** What somebody wrote, for the middle of a sentence of ours: it brings its own full stop more often than not. */
export const quoted = (text: string): string => text.trim().replace(/[.…]+$/u, '');

/** Why a tool is not believed, for after its name: the two reasons that are no words of the shop are put into some. */
export const suspectWords = (reason: string): string =>
  reason === 'as-found' ? 'found off at calibration' : reason === 'overdue' ? 'calibration run out' : reason;

const PLACES: Readonly<Record<string, string>> = {
  L: 'left',
  R: 'right',
  FL: 'front left',
  FR: 'front right',
  RL: 'rear left',
  RR: 'rear right',
};

/** `FL`: front left; undefined for a place that is only counted. */
export const placeWords = (position: string): string | undefined => PLACES[position];

/** `Spring front eye, left`: a name with the place that its key stands for. */
export const withPlace = (key: string, name: string): string => {
  const place = key.includes('@') ? placeWords(key.slice(key.indexOf('@') + 1)) : undefined;
  return place === undefined ? name : `${name}, ${place}`;
};

/** `engine in`: a condition's key is its name; the plan's text behind it explains it. */
export const conditionWords = (key: string): string => key.replaceAll('-', ' ');

interface Number {
  readonly is: string;
  readonly has: string;
  readonly does: string;
  readonly was: string;
  readonly it: string;
}

const ONE: Number = { is: 'is', has: 'has', does: 'does', was: 'was', it: 'it' };
const MANY: Number = { is: 'are', has: 'have', does: 'do', was: 'were', it: 'them' };

/** What a name says besides its thing: where, of what, with what. */
const BEHIND_THE_THING = /,| \(| (?:to|in|into|of|on|onto|with|for|at|by|from|under|behind|without) /u;
const CODE = /^[A-Z]{1,3}-\d+(?:@\w+)? /u;

/**
 * The words that go with a part or a joint as it is called: `uprights (P-33)` are fitted, `axle to frame (J-1)` is
 * tight. Not for work and checks: to bleed the brakes is one thing.
 */
export const numberOf = (thing: string): Number => {
  const [head = ''] = thing.replace(CODE, '').split(BEHIND_THE_THING);
  return / (?:and|&) /u.test(head) || /[^siu]s$/iu.test(head) ? MANY : ONE;
};

const VERBS: readonly (readonly [RegExp, keyof Number])[] = [
  [/^is(?= )/u, 'is'],
  [/^has(?= )/u, 'has'],
];

/** What is said behind a thing’s name, with the verb that the name asks for. */
export const agreeing = (thing: string, says: string): string => {
  const found = VERBS.find(([verb]) => verb.test(says));
  return found === undefined ? says : says.replace(found[0], numberOf(thing)[found[1]]);
};
