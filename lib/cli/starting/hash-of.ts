/** One hash over files and folders, by path and content: dates change with every checkout. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

const filesBelow = (path: string): readonly string[] => {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return [];
  if (found.isFile()) return [path];
  return readdirSync(path).flatMap((name) => filesBelow(join(path, name)));
};

export const hashOf = (root: string, paths: readonly string[], without: readonly string[] = []): string => {
  const left = without.map((path) => join(root, path) + sep);
  const hash = createHash('sha256');
  for (const file of paths.flatMap((path) => filesBelow(join(root, path))).sort()) {
    if (left.some((folder) => file.startsWith(folder))) continue;
    hash.update(relative(root, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
};
