import { PrismaPg } from '@prisma/adapter-pg';
import { ColumnTypeEnum, type SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import pg from 'pg';

const charOid = 18;
const bpcharOid = 1042;

/**
 * Prisma's PostgreSQL adapter for the schema engine. The engine's questions to the catalogue return PostgreSQL's
 * internal type "char" (OID 18), which the adapter does not know: such columns are let through as text and then
 * reported as characters, which is what the engine expects.
 */
export function postgresMigrationAdapter(connectionString: string): SqlMigrationAwareDriverAdapterFactory {
  const charColumns = new Map<string, Set<number>>();
  const pool = new pg.Pool({ connectionString, max: 2 });
  noteCharColumns(pool, charColumns);
  const factory = new PrismaPg(pool, { disposeExternalPool: true });
  const connect = factory.connect.bind(factory);
  factory.connect = async () => {
    const adapter = await connect();
    const queryRaw = adapter.queryRaw.bind(adapter);
    adapter.queryRaw = async (query) => {
      const result = await queryRaw(query);
      for (const index of charColumns.get(query.sql) ?? [])
        result.columnTypes[index] = ColumnTypeEnum.Character;
      return result;
    };
    return adapter;
  };
  return factory;
}

type Query = (...args: readonly unknown[]) => Promise<pg.QueryResult>;

function noteCharColumns(pool: pg.Pool, charColumns: Map<string, Set<number>>): void {
  const asked = pool as unknown as { query: Query };
  const query = asked.query.bind(pool);
  asked.query = async (...args) => {
    const result = await query(...args);
    const text = (args[0] as { text: string }).text;
    (result.fields ?? []).forEach((field, index) => {
      if (field.dataTypeID !== charOid) return;
      field.dataTypeID = bpcharOid;
      charColumns.set(text, (charColumns.get(text) ?? new Set()).add(index));
    });
    return result;
  };
}
