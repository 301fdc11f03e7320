/** `Zoë Fenn-Hall` → `zoe`, or `zoe-2` where that is taken: what a person is called in the records. */
export const shortName = (name: string, taken: readonly string[]): string => {
  const first = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .find((word) => word !== '');
  return first === undefined ? '' : nextFree(first, taken);
};

const nextFree = (word: string, taken: readonly string[]): string => {
  if (!taken.includes(word)) return word;
  let nr = 2;
  while (taken.includes(`${word}-${String(nr)}`)) nr += 1;
  return `${word}-${String(nr)}`;
};

/** The next code of its kind: `T-07` after `T-06`. */
export const nextCode = (prefix: string, taken: readonly string[]): string => {
  const numbers = taken.flatMap((code) => {
    const found = new RegExp(`^${prefix}-(\\d+)$`).exec(code);
    return found === null ? [] : [Number(found[1])];
  });
  return `${prefix}-${String(Math.max(0, ...numbers) + 1).padStart(2, '0')}`;
};
