/** The token of the sign-in form, made as next-auth checks it: `token|SHA-256(token + secret)` in a cookie. */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { authSecret } from './setting';

const sealOf = (token: string): string =>
  createHash('sha256').update(`${token}${authSecret()}`).digest('hex');

export interface FormToken {
  readonly token: string;
  readonly cookie: string;
}

export const newFormToken = (): FormToken => {
  const token = randomBytes(32).toString('hex');
  return { token, cookie: `${token}|${sealOf(token)}` };
};

/** The token in a cookie of ours; null for any other. */
export const formTokenIn = (cookie: string | undefined): string | null => {
  const [token = '', seal = ''] = (cookie ?? '').split('|');
  if (!/^[0-9a-f]{64}$/.test(token) || !/^[0-9a-f]{64}$/.test(seal)) return null;
  return timingSafeEqual(Buffer.from(seal), Buffer.from(sealOf(token))) ? token : null;
};
