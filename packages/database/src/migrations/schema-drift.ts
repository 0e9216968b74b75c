import { databaseKind } from '../database-kind.js';
import { migrate } from './migrate.js';
import { readSchema, schemaFolder } from './read-schema.js';
import { withScratchDatabase } from './with-scratch-database.js';

/**
 * What the models say beyond what the migrations make, as SQL.
 * @param url kind (and for PostgreSQL server) on which the migrations are tried out, in a database that is thrown away
 * @returns the missing SQL; null where migrations and models agree
 */
export async function schemaDrift(url: string): Promise<string | null> {
  const { noFilters, withSchemaEngine } = await import('./with-schema-engine.js');
  return withScratchDatabase(url, async (scratchUrl) => {
    await migrate(scratchUrl);
    const kind = databaseKind(url);
    const files = readSchema(kind).map((file) => ({ path: file.path, content: file.content }));
    const found = await withSchemaEngine(scratchUrl, (engine) =>
      engine.diff({
        from: { tag: 'schemaDatasource', files, configDir: schemaFolder(kind) },
        to: { tag: 'schemaDatamodel', files },
        script: true,
        exitCode: true,
        filters: noFilters,
      }),
    );
    return found.exitCode === 0 ? null : found.stdout;
  });
}
