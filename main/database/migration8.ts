/** The workshop's language; workshops from before were all in English. */
export const inLanguages = `ALTER TABLE settings ADD COLUMN language TEXT NOT NULL DEFAULT 'en';`
