/** What a file must be before it is read as a plan. Apart from the reader, so that a browser asks it first. */

/** A plan of a whole car is a few hundred kilobytes; what is longer stops the browser that shows it. */
export const MOST_PLAN_BYTES = 1_000_000;

interface PlanFileTrouble {
  readonly code: 'too-large' | 'not-text';
  readonly sentence: string;
}

export const TOO_LARGE: PlanFileTrouble = {
  code: 'too-large',
  sentence: 'This file is over 1 MB, which no build plan is. Split off what isn’t the plan.',
};

const NOT_TEXT: PlanFileTrouble = {
  code: 'not-text',
  sentence:
    'This is no text: a picture, perhaps, or a file of another program. Choose the plan’s YAML or JSON file, saved as UTF-8.',
};

/** Null if it may be read. No text holds a NUL, nor the sign that stands for bytes that are no UTF-8. */
export const planFileTrouble = (text: string): PlanFileTrouble | null => {
  // Each unit of the string is at least one byte: the cheap test keeps the encoder from a huge text.
  if (text.length > MOST_PLAN_BYTES || new TextEncoder().encode(text).length > MOST_PLAN_BYTES)
    return TOO_LARGE;
  return text.includes('\0') || text.includes('\uFFFD') ? NOT_TEXT : null;
};
