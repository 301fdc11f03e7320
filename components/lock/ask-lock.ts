/** The lock's own word with the server. */
import type { LockAnswer, LockRequest } from '@/lib/wire/lock';

export const askLock = async (request: LockRequest): Promise<LockAnswer | null> => {
  try {
    const response = await fetch('/api/lock', {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      credentials: 'same-origin',
      cache: 'no-store',
      keepalive: true,
      body: JSON.stringify(request),
    });
    return (await response.json()) as LockAnswer;
  } catch {
    return null;
  }
};
