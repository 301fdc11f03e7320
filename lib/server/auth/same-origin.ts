/** Does this post come from a page of ours? The origin is the configured one; no header may say another. */
import { ownOrigin } from './setting';

const READING: ReadonlySet<string> = new Set(['GET', 'HEAD']);

export const isReading = (method: string): boolean => READING.has(method);

/**
 * Browsers say where a post comes from in `Origin`, and most in `Sec-Fetch-Site` too. Whatever is said must be right,
 * and something must be said. `X-Forwarded-Host` and `Host` are not asked: whoever sends the request writes them.
 */
export const isFromHere = (headers: Headers): boolean => {
  const origin = headers.get('origin');
  const site = headers.get('sec-fetch-site');
  if (origin === null && site === null) return false;
  return (origin === null || origin === ownOrigin()) && (site === null || site === 'same-origin');
};
