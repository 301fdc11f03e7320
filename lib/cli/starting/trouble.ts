/** What stops a start and can be put right by a person: one sentence of what is wrong, one of what to do. */

export class StartTrouble extends Error {
  override readonly name = 'StartTrouble';
}

const codeOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';

const textOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Node says ENOSPC, Postgres 53100, and every program that we only hear talking says it in these words. */
const isDiskFull = (error: unknown): boolean =>
  ['ENOSPC', 'EDQUOT', '53100'].includes(codeOf(error)) ||
  /ENOSPC|No space left on device|Disk quota exceeded/i.test(textOf(error));

export const DISK_FULL =
  'The disk is full. Make room and run the same command again: what is half done is done over, nothing is lost.';

/** Turns what Node, npm or Postgres threw into trouble with a way out, where there is one. */
export const asTrouble = (error: unknown): StartTrouble | null => {
  if (error instanceof StartTrouble) return error;
  if (isDiskFull(error)) return new StartTrouble(`${DISK_FULL}\n${textOf(error)}`);
  if (['EACCES', 'EPERM'].includes(codeOf(error)))
    return new StartTrouble(
      `${textOf(error)}\nThis belongs to somebody else: start as the same user as the first time, or give the folder to yourself.`,
    );
  return null;
};
