/** Notes what a thing was made from, once it is whole: what was cut off in the middle has no stamp and is made again. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';

export const makeUnlessStamped = async (
  file: string,
  wanted: string,
  make: () => Promise<void>,
  isThere = true,
): Promise<'made' | 'unchanged'> => {
  if (isThere && existsSync(file) && readFileSync(file, 'utf8') === wanted) return 'unchanged';
  rmSync(file, { force: true });
  await make();
  writeFileSync(file, wanted);
  return 'made';
};
