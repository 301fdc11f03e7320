/**
 * What this very page is doing: the screen that did it refreshes by itself, and doesn't light up over its own news.
 * News of an act may come before its answer, so that it counts from the moment it is sent.
 */

/** The news may also be a little later than the answer. */
const LINGERS_MS = 1500;

const acting = new Map<string, number>();

/** Notes that an act on this stream is on its way; gives what to call when it was answered. */
export const ownAct = (stream: string): (() => void) => {
  acting.set(stream, (acting.get(stream) ?? 0) + 1);
  return () => {
    setTimeout(() => {
      const left = (acting.get(stream) ?? 1) - 1;
      if (left === 0) acting.delete(stream);
      else acting.set(stream, left);
    }, LINGERS_MS);
  };
};

export const isOwnAct = (stream: string): boolean => acting.has(stream);
