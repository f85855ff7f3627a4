/**
 * The program's typefaces written out, for a drawing that is drawn by itself and can fetch nothing. Only the files that the
 * page has in use are taken: the others hold letters that stand nowhere.
 */
const kept = new Map<string, Promise<string>>()

const asData = async (address: string): Promise<string> => {
  const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer())
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return `data:font/woff2;base64,${btoa(text)}`
}

const dataOf = (address: string): Promise<string> => {
  const known = kept.get(address) ?? asData(address)
  kept.set(address, known)
  // What could not be read once is tried again.
  known.catch(() => kept.delete(address))
  return known
}

const unquoted = (family: string): string => family.replace(/["']/g, '')
const spaceless = (text: string): string => text.replace(/\s/g, '').toLowerCase()

/** Whether the page has drawn letters from this file. */
const isInUse = ({ style }: CSSFontFaceRule): boolean =>
  Array.from(document.fonts).some(
    (face) =>
      face.status === 'loaded' &&
      unquoted(face.family) === unquoted(style.getPropertyValue('font-family')) &&
      face.weight === style.getPropertyValue('font-weight') &&
      spaceless(face.unicodeRange) === spaceless(style.getPropertyValue('unicode-range')),
  )

const addressOf = (rule: CSSFontFaceRule): string => {
  const address = /url\(["']?([^"')]+)/.exec(rule.style.getPropertyValue('src'))?.[1] ?? ''
  return new URL(address, rule.parentStyleSheet?.href ?? document.baseURI).href
}

const written = async (rule: CSSFontFaceRule): Promise<string> => {
  const said = ['font-family', 'font-weight', 'font-style', 'unicode-range']
    .map((name) => `${name}:${rule.style.getPropertyValue(name)}`)
    .join(';')
  return `@font-face{${said};src:url(${await dataOf(addressOf(rule))}) format("woff2")}`
}

/** @returns the style sheet that brings the typefaces in use along */
export const facesInUse = async (): Promise<string> => {
  const rules = Array.from(document.styleSheets).flatMap((sheet) => Array.from(sheet.cssRules))
  const faces = rules.filter((rule) => rule instanceof CSSFontFaceRule).filter(isInUse)
  return (await Promise.all(faces.map(written))).join('')
}
