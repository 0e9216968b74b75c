export { databaseKind, type DatabaseKind } from './database-kind.js';
export { DatabaseRefusedError, ScopeError } from './errors.js';
export { Prisma, type PrismaClient } from './generated/sqlite/client.js';
export type * from './generated/sqlite/client.js';
export { migrate } from './migrations/migrate.js';
export { schemaDrift } from './migrations/schema-drift.js';
export { openDatabase, type DatabaseOptions, type OpenDatabase } from './open-database.js';
export { isUniqueConflict } from './is-unique-conflict.js';
export { scopeToWorkshop, type WorkshopDatabase, type WorkshopTransaction } from './scope-to-workshop.js';
