/** A text file, or one sentence about why it can't be read. */
import { readFileSync } from 'node:fs';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'reading it is not allowed',
};

/** UTF-8 only: a file in another encoding would be read as something it doesn't say. */
export const readText = (file: string): Result<string, string> => {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file)));
  } catch (error) {
    if (error instanceof TypeError) return err(`${file} can’t be read: it is no UTF-8 text.`);
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return err(`${file} can’t be read: ${REASONS[code] ?? code}.`);
  }
};
