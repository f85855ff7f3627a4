import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
} from 'kysely'

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
