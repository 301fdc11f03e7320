/** Brings a database to this release's tables, and says no where it would do harm. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Client } from 'pg';
import { withClient } from './roles';
import { StartTrouble } from './trouble';

interface Known {
  readonly name: string;
  readonly sql: string;
}

const knownMigrations = (folder: string): readonly Known[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => ({ name, sql: readFileSync(join(folder, name, 'migration.sql'), 'utf8') }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));

interface State {
  readonly applied: ReadonlySet<string>;
  /** Begun and not brought to its end: the process died, or the migration failed. Nothing of it is there. */
  readonly cutOff: readonly string[];
}

const stateOf = async (client: Client): Promise<State | null> => {
  const there = await client.query("SELECT to_regclass('public._prisma_migrations') IS NOT NULL AS there");
  if (!(there.rows[0] as { there: boolean }).there) return null;
  const { rows } = await client.query<{ name: string; done: boolean }>(
    'SELECT migration_name AS name, finished_at IS NOT NULL AS done FROM _prisma_migrations WHERE rolled_back_at IS NULL',
  );
  return {
    applied: new Set(rows.filter((row) => row.done).map((row) => row.name)),
    cutOff: rows.filter((row) => !row.done).map((row) => row.name),
  };
};

const refuseStrangers = async (client: Client): Promise<void> => {
  const { rows } = await client.query<{ name: string }>(
    "SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1 LIMIT 3",
  );
  if (rows.length > 0)
    throw new StartTrouble(
      `This database holds tables of another program (${rows.map((row) => row.name).join(', ')} …). Nothing was changed in it.\nGive Slipmark a database of its own.`,
    );
};

/** Answers the names of the migrations that were applied now. Asking costs one query where there is nothing to do. */
export const migrate = async (url: string, folder: string): Promise<readonly string[]> => {
  const known = knownMigrations(folder);
  const state = await withClient(url, async (client) => {
    const found = await stateOf(client);
    if (found === null) await refuseStrangers(client);
    return found;
  });
  const unknown = [...(state?.applied ?? [])].filter((name) => known.every((one) => one.name !== name));
  if (unknown.length > 0)
    throw new StartTrouble(
      `This database was used by a newer release of Slipmark (${unknown.join(', ')}). Nothing was changed in it.\nStart that release.`,
    );
  if (state?.cutOff.length === 0 && known.every((one) => state.applied.has(one.name))) return [];

  const { withSchemaEngine } = await import('./schema-engine');
  return await withSchemaEngine(url, async (engine) => {
    for (const migrationName of state?.cutOff ?? []) await engine.markMigrationRolledBack({ migrationName });
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: {
        baseDir: folder,
        lockfile: {
          path: 'migration_lock.toml',
          content: readFileSync(join(folder, 'migration_lock.toml'), 'utf8'),
        },
        shadowDbInitScript: '',
        migrationDirectories: known.map(({ name, sql }) => ({
          path: name,
          migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: sql } },
        })),
      },
      filters: { externalTables: [], externalEnums: [] },
    });
    return appliedMigrationNames;
  });
};
