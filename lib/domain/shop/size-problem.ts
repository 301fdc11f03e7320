/** What of a size line can't be read: which part, what stands there, what was understood, and what is expected. */
import { quoted } from '@/lib/domain/base/words';

export type SizePart =
  | 'kind'
  | 'thread'
  | 'pitch'
  | 'length'
  | 'diameter'
  | 'grade'
  | 'finish'
  | 'tube'
  | 'rest';

export interface SizeProblem {
  readonly part: SizePart;
  /** As it stands in the line; empty where it is missing. */
  readonly found: string;
  /** The parts that could be read, as they would be written; empty where there is none. */
  readonly understood: string;
  /** What belongs there, in words for the end of a sentence. */
  readonly expected: string;
}

const PARTS: Readonly<Record<SizePart, string>> = {
  kind: 'the kind of thing',
  thread: 'the thread',
  pitch: 'the pitch',
  length: 'the length',
  diameter: 'the diameter',
  grade: 'the grade',
  finish: 'the finish',
  tube: 'the tube',
  rest: 'the rest',
};

/** One problem in words. */
export const sizeProblemSentence = ({ part, found, understood, expected }: SizeProblem): string =>
  [
    found === ''
      ? `${capital(PARTS[part])} is missing.`
      : `${capital(PARTS[part])} can’t be read: “${quoted(found)}”.`,
    ...(understood === '' ? [] : [`Understood so far: ${understood}.`]),
    `Write ${expected}.`,
  ].join(' ');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
