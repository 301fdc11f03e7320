/** Money in its smallest unit: whole numbers, so that no sum is ever rounded. */

/** `1290.50`: for a sentence, a field or a file; the currency is said elsewhere. */
export const amount = (minor: number): string => {
  const size = Math.abs(minor);
  return `${minor < 0 ? '−' : ''}${String(Math.floor(size / 100))}.${String(size % 100).padStart(2, '0')}`;
};
