/** Is this page covered by the lock? Told by the cover; heard by whatever must not ask for pages meanwhile. */

let isCovered = false;
const heard = new Set<() => void>();

export const cover = {
  current: (): boolean => isCovered,
  set: (next: boolean): void => {
    isCovered = next;
    for (const each of heard) each();
  },
  subscribe: (each: () => void): (() => void) => {
    heard.add(each);
    return () => {
      heard.delete(each);
    };
  },
};
