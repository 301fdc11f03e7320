/** What a command of the command line comes to: what it prints, and the number it ends with. */

export interface Answer {
  /** 0 all right, 1 something is wrong with what was read, 2 it could not be read or the arguments are bad. */
  readonly exit: 0 | 1 | 2;
  /** For stdout, which may be piped into another program. */
  readonly out: readonly string[];
  /** For stderr. */
  readonly problems?: readonly string[];
}

export const asJson = (value: unknown): readonly string[] => [JSON.stringify(value, null, 2)];

export const unusable = (...problems: readonly string[]): Answer => ({ exit: 2, out: [], problems });
