/** A photograph as screens show it: the kept copy under its name, and what it shows in words. */
export interface PhotoRef {
  /** Of the original; the copy is read under it. */
  readonly hash: string;
  /** `F-3 Lower wishbone, as found`: what one hears who does not see it. */
  readonly shows: string;
  /** `Tobit Fenn, today 10:14`. */
  readonly taken: string;
}

/** A history that was played from a file may name one that no shop keeps. */
export const isKeptName = (hash: string): boolean => /^[0-9a-f]{64}$/.test(hash);
