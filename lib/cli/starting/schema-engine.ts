/**
 * Prisma's own migration engine as WebAssembly. Its command line would fetch the same engine as a program from a host
 * of its own while it runs; this one is in a package.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import { Pool } from 'pg';
import type * as Bindings from '@prisma/schema-engine-wasm/schema_engine_bg';

const require = createRequire(import.meta.url);

/** The bindings expect what a bundler would do for them: the module made and handed over. */
const loadBindings = async (): Promise<typeof Bindings> => {
  const file = require.resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bindings = (await import(pathToFileURL(file).href)) as typeof Bindings & WebAssembly.ModuleImports;
  const wasm = new WebAssembly.Module(readFileSync(join(dirname(file), 'schema_engine_bg.wasm')));
  const { exports } = new WebAssembly.Instance(wasm, { './schema_engine_bg.js': bindings });
  bindings.__wbg_set_wasm(exports);
  (exports as { __wbindgen_start: () => void }).__wbindgen_start();
  return bindings;
};

let loaded: Promise<typeof Bindings> | undefined;

/**
 * The adapter cuts a script at every semicolon, also those within a function's body. Sent whole, Postgres parts it by
 * itself, and runs it as one transaction: a migration holds or leaves nothing.
 */
class WholeScripts extends PrismaPg {
  override async connect() {
    const adapter = await super.connect();
    adapter.executeScript = async (script) => {
      await adapter.underlyingDriver().query(script);
    };
    return adapter;
  }
}

export const withSchemaEngine = async <Value>(
  url: string,
  work: (engine: Bindings.SchemaEngine) => Promise<Value>,
): Promise<Value> => {
  const { SchemaEngine } = await (loaded ??= loadBindings());
  // Our own pool, ended below: a connection that lingers would keep the database from being copied or renamed.
  const pool = new Pool({ connectionString: url, max: 2 });
  const adapter = bindMigrationAwareSqlAdapterFactory(new WholeScripts(pool));
  const engine = await SchemaEngine.new({ datamodels: undefined }, () => undefined, adapter);
  try {
    return await work(engine);
  } finally {
    engine.free();
    await pool.end();
  }
};
