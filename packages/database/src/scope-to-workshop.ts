import { ScopeError } from './errors.js';
import type { PrismaClient } from './generated/sqlite/client.js';

type Unscoped =
  | '$connect'
  | '$disconnect'
  | '$on'
  | '$extends'
  | '$transaction'
  | '$executeRaw'
  | '$executeRawUnsafe'
  | '$queryRaw'
  | '$queryRawUnsafe';

/** One workshop's rows within a transaction; a `WorkshopDatabase` will do where no transaction is open. */
export type WorkshopTransaction = Omit<PrismaClient, Unscoped>;

/** One workshop's rows: reads find no other's, writes land in no other's. */
export type WorkshopDatabase = WorkshopTransaction & {
  /** All or nothing. Use `tx` for every query inside; returns what `work` returns. */
  $transaction<R>(work: (tx: WorkshopTransaction) => Promise<R>): Promise<R>;
};

type Row = Record<string, unknown>;
interface Query {
  readonly model: string;
  readonly operation: string;
  readonly args: Row;
  readonly query: (args: Row) => Promise<unknown>;
}

const nestedWrites = ['create', 'createMany', 'connect', 'connectOrCreate', 'upsert'];

/**
 * The database as one workshop sees it: adds its id to every condition and every new row.
 * Related rows are written one by one, by their ids; nested writes, raw SQL and the creation of workshops throw
 * ScopeError, since they would slip past the scope.
 */
export function scopeToWorkshop(client: PrismaClient, workshopId: string): WorkshopDatabase {
  if (workshopId === '') throw new ScopeError('scopeToWorkshop needs the id of a workshop');
  const refuseRaw = (): never => {
    throw new ScopeError('raw SQL does not know the workshop: use the unscoped client');
  };
  const scoped = client.$extends({
    query: {
      $allModels: {
        $allOperations: (query) =>
          query.query(scopeArguments(query as unknown as Query, workshopId) as never),
      },
      $executeRaw: refuseRaw,
      $executeRawUnsafe: refuseRaw,
      $queryRaw: refuseRaw,
      $queryRawUnsafe: refuseRaw,
    },
  });
  return scoped as unknown as WorkshopDatabase;
}

function scopeArguments({ model, operation, args = {} }: Query, workshopId: string): Row {
  const scope: Row = model === 'Workshop' ? { id: workshopId } : { workshopId };
  const scopedRow = (data: unknown): Row => ({ ...checkRow(data as Row, workshopId), ...scope });
  switch (operation) {
    case 'create':
      refuseNewWorkshop(model);
      return { ...args, data: scopedRow(args['data']) };
    case 'createMany':
    case 'createManyAndReturn':
      refuseNewWorkshop(model);
      return { ...args, data: [args['data']].flat().map(scopedRow) };
    case 'upsert':
      refuseNewWorkshop(model);
      checkRow(args['update'] as Row, workshopId);
      return { ...args, where: and(args['where'], scope), create: scopedRow(args['create']) };
    default:
      if (args['data'] !== undefined) checkRow(args['data'] as Row, workshopId);
      return { ...args, where: and(args['where'], scope) };
  }
}

/** A condition may name another workshop; then it finds nothing, as it should. */
function and(where: unknown, scope: Row): Row {
  const given = (where ?? {}) as Row;
  return { ...given, AND: [...[given['AND'] ?? []].flat(), scope] };
}

function refuseNewWorkshop(model: string): void {
  if (model === 'Workshop') throw new ScopeError('a workshop cannot be made from inside one');
}

function checkRow(data: Row, workshopId: string): Row {
  if (data['workshopId'] !== undefined && data['workshopId'] !== workshopId) {
    throw new ScopeError('the row names another workshop');
  }
  for (const [field, value] of Object.entries(data)) {
    if (isNestedWrite(value)) throw new ScopeError(`write the rows of "${field}" one by one, by their ids`);
  }
  return data;
}

function isNestedWrite(value: unknown): boolean {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const keys = Object.keys(value);
  return keys.length > 0 && keys.every((key) => nestedWrites.includes(key));
}
