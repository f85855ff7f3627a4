import { toolKinds } from '../contract/entities.ts'
import type { Database } from '../database/schema.ts'
import { createTexts } from '../texts.ts'

/** Writes down what the kinds are called, where the file does not know or the language is another, so that tools are found by it. */
export const noteKindNames = async (db: Database): Promise<void> => {
  const { t } = createTexts()
  const noted = new Map((await db.selectFrom('kindName').selectAll().execute()).map(({ kind, words }) => [kind, words]))
  for (const kind of toolKinds) {
    const words = t(`common:toolKind.${kind}`)
    if (noted.get(kind) === words) continue
    await db
      .insertInto('kindName')
      .values({ kind, words })
      .onConflict((there) => there.column('kind').doUpdateSet({ words }))
      .execute()
  }
}
