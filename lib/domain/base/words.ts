/** What the sentences are made of. */
import type { RefusalCode, RefusalDetails } from './refusals';
import type { PersonId } from './vocabulary';

/** The plan's name for a key, the shop's for a person; null where it has none. */
export type NameOf = (key: string) => string | null;

/** `J-212 steering box to bracket`: a key with its name behind it. */
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
