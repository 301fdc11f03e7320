/** The set-up's own posts, which are no commands: nothing of them is lost by asking again. */
import type { SetUpRefused } from '@/lib/wire/set-up';

export const ask = async <Answer extends { readonly outcome: string }>(
  path: string,
  body: unknown,
): Promise<Answer | SetUpRefused> => {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      credentials: 'same-origin',
      body: JSON.stringify(body),
    });
    return (await response.json()) as Answer | SetUpRefused;
  } catch {
    return { outcome: 'refused', says: 'No answer came from the shop’s server. Try again.' };
  }
};
