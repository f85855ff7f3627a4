import { writeFileSync } from 'node:fs'
import {
  readmePath,
  readmeWith,
  readReadme,
  referencePage,
  referencePath,
  screensTable,
  strictTexts,
} from './support/pages.ts'

/** `npm run pages`: writes assets/REFERENCE.md and the README's table of screens anew, from what help is made from. */
const t = strictTexts()
writeFileSync(referencePath, referencePage(t))
writeFileSync(readmePath, readmeWith(readReadme(), screensTable(t)))
