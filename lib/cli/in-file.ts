/** Faults of a file as lines that editors and terminals turn into links: `order.json:12:5: …`. */
import type { FileFault } from '@/lib/wire/solve-file';

export const inFile = (file: string, faults: readonly FileFault[]): readonly string[] =>
  faults.map(
    ({ line, column, path, sentence }) =>
      `${file}:${String(line)}:${String(column)}: ${path === '' ? '' : `${path}: `}${sentence}`,
  );
