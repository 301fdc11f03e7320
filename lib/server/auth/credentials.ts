/** Setting passwords and PINs. */
import 'server-only';
import type { Database } from '@/lib/server/database';
import { hashSecret } from './secret-hash';
import { passwordFaults, pinFaults } from './secret-rules';
import type { SecretFault } from './secret-rules';

export interface Secrets {
  readonly password?: string;
  readonly pin?: string;
}

interface Setting {
  /** The demo's PINs are simple on purpose: they stand in the terminal. */
  readonly unchecked?: boolean;
}

export const secretFaults = async (
  db: Database,
  person: string,
  { password, pin }: Secrets,
): Promise<readonly SecretFault[]> => {
  const [shop, named] = await Promise.all([
    db.shopSetting.findUnique({ where: { id: 1 }, select: { name: true } }),
    db.person.findUnique({ where: { id: person }, select: { name: true } }),
  ]);
  const names = [shop?.name ?? '', named?.name ?? '', person];
  return [
    ...(password === undefined ? [] : passwordFaults(password, names)),
    ...(pin === undefined ? [] : pinFaults(pin)),
  ];
};

/**
 * Sets what is given and leaves the other as it was. Whoever is signed in as that person is signed out everywhere.
 * The person must be on the shop's books. Gives what is wrong with the secrets; then nothing was set.
 */
export const setCredential = async (
  db: Database,
  person: string,
  secrets: Secrets,
  { unchecked = false }: Setting = {},
): Promise<readonly SecretFault[]> => {
  const faults = unchecked ? [] : await secretFaults(db, person, secrets);
  if (faults.length > 0) return faults;
  const hashes = await hashesOf(secrets);
  await db.$transaction([writeCredential(db, person, hashes), endSessionsOf(db, person)]);
  return [];
};

export interface Hashes {
  readonly passwordHash?: string;
  readonly pinHash?: string;
}

export const hashesOf = async ({ password, pin }: Secrets): Promise<Hashes> => ({
  ...(password === undefined ? {} : { passwordHash: await hashSecret(password) }),
  ...(pin === undefined ? {} : { pinHash: await hashSecret(pin) }),
});

type Writer = Pick<Database, 'credential' | '$executeRaw'>;

export const writeCredential = (db: Writer, person: string, hashes: Hashes) => {
  const changedAt = new Date();
  return db.credential.upsert({
    where: { person },
    create: { person, ...hashes, changedAt },
    update: { ...hashes, changedAt },
  });
};

/** By the database's clock, which `made_at` is of too. */
export const endSessionsOf = (db: Writer, person: string) =>
  db.$executeRaw`UPDATE session SET ended_at = now() WHERE person = ${person} AND ended_at IS NULL`;
