/** Whether two rows say the same, in whatever order their fields were kept. */
export const isSame = (a: unknown, b: unknown): boolean => {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [Object.entries(a), new Map(Object.entries(b))];
  return (
    left.length === right.size &&
    left.every(([key, value]) => right.has(key) && isSame(value, right.get(key)))
  );
};
