const SMALL = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** `three reasons`, `one reason`. */
export const numberOf = (count: number, word: string): string =>
  `${SMALL[count] ?? String(count)} ${word}${count === 1 ? '' : 's'}`;
