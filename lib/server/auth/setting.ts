/**
 * What signing in needs from whoever starts the server. Without it nothing is guessed: every page and the door fail.
 * Read at each use, for a build evaluates modules without any of it.
 */

/** Origin of the shop's address, `http://127.0.0.1:4200`: the only one that posts are taken from. */
export const ownOrigin = (): string => {
  const given = process.env.NEXTAUTH_URL;
  if (given === undefined || !URL.canParse(given))
    throw new Error('NEXTAUTH_URL is not set: it must hold the address that the shop is opened at.');
  return new URL(given).origin;
};

/** Over plain http a browser would not give back a cookie that is marked as secure. */
export const isSecure = (): boolean => ownOrigin().startsWith('https://');

/** Seals the browser's cookie. */
export const authSecret = (): string => {
  const given = process.env.NEXTAUTH_SECRET;
  if (given === undefined || given === '')
    throw new Error('NEXTAUTH_SECRET is not set: give the same long random text to every instance.');
  return given;
};
