import { bindMigrationAwareSqlAdapterFactory, type SqlDriverAdapter } from '@prisma/driver-adapter-utils';
import type { SchemaEngine } from '@prisma/schema-engine-wasm';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { databaseKind } from '../database-kind.js';
import { migrationAdapter } from './migration-adapter.js';
import { readSchema } from './read-schema.js';

/** The schema engine looks at no table but ours. */
export const noFilters = { externalTables: [], externalEnums: [] };

/**
 * Runs `work` with Prisma's schema engine on one database; the engine is WebAssembly, so nothing is downloaded.
 * Connections are closed when the work ends.
 * @param url address of the database
 */
export async function withSchemaEngine<T>(
  url: string,
  work: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  loadEngine();
  const factory = migrationAdapter(url);
  const opened: SqlDriverAdapter[] = [];
  const connect = factory.connect.bind(factory);
  factory.connect = async () => {
    const adapter = await connect();
    opened.push(adapter);
    return adapter;
  };
  const engine: SchemaEngine = await bindings.SchemaEngine.new(
    { datamodels: readSchema(databaseKind(url)).map((file) => [file.path, file.content]) },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
  try {
    return await work(engine);
  } finally {
    engine.free();
    await Promise.all(opened.map((adapter) => adapter.dispose()));
  }
}

let loaded = false;

/** The package's own door imports the .wasm file as a module, which Node does not do: instantiated by hand. */
function loadEngine(): void {
  if (loaded) return;
  loaded = true;
  const folder = path.dirname(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm'));
  const { WebAssembly } = globalThis as unknown as { WebAssembly: WasmLoader };
  const wasm = new WebAssembly.Module(readFileSync(path.join(folder, 'schema_engine_bg.wasm')));
  const instance = new WebAssembly.Instance(wasm, { './schema_engine_bg.js': bindings });
  bindings.__wbg_set_wasm(instance.exports);
  instance.exports['__wbindgen_start']?.();
}

/** As much of WebAssembly as is used here: its types come with browser libraries only. */
interface WasmLoader {
  Module: new (bytes: Uint8Array) => object;
  Instance: new (wasm: object, imports: object) => { exports: Record<string, () => void> };
}
