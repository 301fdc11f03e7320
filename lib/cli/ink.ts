/** Colour, and only where a person looks: never in a file or a pipe, nor where NO_COLOR is set. */
import { styleText } from 'node:util';

type Paint = (text: string) => string;

export interface Ink {
  readonly good: Paint;
  readonly bad: Paint;
  readonly strong: Paint;
  readonly faint: Paint;
}

const plain: Paint = (text) => text;
export const PLAIN_INK: Ink = { good: plain, bad: plain, strong: plain, faint: plain };

/** Whether the stream takes colour is settled in `inkFor`; Node need not ask again. */
const ASKED = { validateStream: false };
const COLOURS: Ink = {
  good: (text) => styleText('green', text, ASKED),
  bad: (text) => styleText('red', text, ASKED),
  strong: (text) => styleText('bold', text, ASKED),
  faint: (text) => styleText('dim', text, ASKED),
};

export const inkFor = (stream: { readonly isTTY?: boolean }, noColor: string | undefined): Ink =>
  stream.isTTY === true && (noColor === undefined || noColor === '') ? COLOURS : PLAIN_INK;
