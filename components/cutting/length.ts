/** A length as it is typed: a bare number is millimetres, another unit is written behind it. */
export const withUnit = (typed: string): string => {
  const text = typed.trim();
  return /^[\d.]+$/u.test(text) ? `${text} mm` : text;
};
