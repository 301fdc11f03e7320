/** What nobody needs to know: the passwords of our own database, and what signs the sessions. Made once, kept in .data. */
import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { StartTrouble } from './trouble';

export interface Secrets {
  readonly superuser: string;
  readonly owner: string;
  readonly app: string;
  readonly session: string;
}

const KEYS = ['superuser', 'owner', 'app', 'session'] as const;

const make = (): Secrets => {
  const secret = (): string => randomBytes(32).toString('base64url');
  return { superuser: secret(), owner: secret(), app: secret(), session: secret() };
};

const read = (file: string): Secrets => {
  const kept = JSON.parse(readFileSync(file, 'utf8')) as Partial<Secrets>;
  const missing = KEYS.filter((key) => typeof kept[key] !== 'string' || kept[key] === '');
  if (missing.length > 0) throw new Error(`${missing.join(', ')} missing`);
  return kept as Secrets;
};

/** Written whole or not at all, and read by nobody else: the mode is there before the content. */
const keep = (file: string, secrets: Secrets): Secrets => {
  writeFileSync(`${file}.new`, JSON.stringify(secrets), { mode: 0o600 });
  renameSync(`${file}.new`, file);
  return secrets;
};

/** `isNew`: there is no database yet that the secrets must fit. */
export const secretsIn = (file: string, isNew: boolean): Secrets => {
  try {
    if (existsSync(file)) {
      chmodSync(file, 0o600);
      return read(file);
    }
  } catch (error) {
    if (!(error instanceof SyntaxError) && !(error instanceof Error && error.message.endsWith('missing')))
      throw error;
    if (!isNew) throw new StartTrouble(lost(file));
  }
  if (!isNew) throw new StartTrouble(lost(file));
  return keep(file, make());
};

const lost = (file: string): string =>
  `The passwords of the database are gone: ${file} is missing or was changed.\nPut it back from a copy, or move .data aside to begin with a new shop.`;
