/** Random names that nobody can guess, and what is kept of them. */
import { createHash, randomBytes } from 'node:crypto';

/** 256 random bits, fit for a cookie or a link. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** What the database keeps of a token. Nothing slower is needed: there is nothing to guess at. */
export const tokenHash = (token: string): string => createHash('sha256').update(token, 'utf8').digest('hex');

/** A device's name in the records, which must not be the cookie that proves it. */
export const deviceIdOf = (token: string): string => tokenHash(`device ${token}`).slice(0, 16);
