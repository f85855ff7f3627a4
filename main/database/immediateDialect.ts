import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  type SqliteDatabase,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
  type SqliteStatement,
} from 'kysely'

/** Statements kept ready; the program has some hundred different ones. */
const STATEMENTS_KEPT = 200

/** A connection that keeps its statements: making one costs more than running it for a single row. The one used longest ago goes first. */
export const keepingStatements = (database: SqliteDatabase): SqliteDatabase => {
  const kept = new Map<string, SqliteStatement>()
  return {
    close: () => database.close(),
    prepare: (sql) => {
      const statement = kept.get(sql) ?? database.prepare(sql)
      kept.delete(sql)
      kept.set(sql, statement)
      const [oldest] = kept.keys()
      if (kept.size > STATEMENTS_KEPT && oldest !== undefined) kept.delete(oldest)
      return statement
    },
  }
}

/** A write that begins by reading would otherwise fail half-way when another connection writes in between. */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'))
  }
}

/** SQLite whose transactions take the write lock at their beginning. */
export class ImmediateDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig

  constructor(config: SqliteDialectConfig) {
    super(config)
    this.#config = config
  }

  override createDriver(): Driver {
    return new ImmediateDriver(this.#config)
  }
}
