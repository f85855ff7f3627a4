import BetterSqlite from 'better-sqlite3'

/**
 * Opens a data file to be read alone. It may have come from anywhere, so nothing that is planted in it, as a view or a
 * trigger, may call what can do harm.
 */
export const openReading = (path: string): BetterSqlite.Database => {
  const file = new BetterSqlite(path, { readonly: true, fileMustExist: true })
  file.pragma('trusted_schema = OFF')
  return file
}
