import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { documentJsonSchema } from '../../main/inOut/document.ts'

const published = join(import.meta.dirname, '../../assets/rack.schema.json')

const renewing = `Where the nouns have changed, write it anew and let Biome lay it out:
node -e "import('./main/inOut/document.ts').then((m) => console.log(JSON.stringify(m.documentJsonSchema(), null, 2)))" > assets/rack.schema.json`

it('the description of the rack file that is published is that of the rack file that is read', () => {
  const described = JSON.parse(JSON.stringify(documentJsonSchema()))
  expect(JSON.parse(readFileSync(published, 'utf8')), renewing).toEqual(described)
})
