/** Counts the commands of this device, so that the server sees when one overtook another (D1). */
const KEY = 'slipmark.sequence';

/** The next number, or undefined where the browser keeps nothing: no number is better than one that lies. */
export const nextSequence = (): number | undefined => {
  try {
    const last = Number(localStorage.getItem(KEY) ?? '0');
    const next = Number.isSafeInteger(last) && last >= 0 ? last + 1 : 1;
    localStorage.setItem(KEY, String(next));
    return next;
  } catch {
    return undefined;
  }
};
