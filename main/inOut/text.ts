import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** How a text says what it is written in; without a mark it is UTF-8. */
const marks = [
  { begins: [0xff, 0xfe], encoding: 'utf-16le' },
  { begins: [0xfe, 0xff], encoding: 'utf-16be' },
  { begins: [], encoding: 'utf-8' },
] as const

/** @returns the bytes as text; or `fileNotText` where they are in another encoding, or no text at all */
export const textOf = (bytes: Uint8Array): Result<string> => {
  const mark = marks.find(({ begins }) => begins.every((byte, i) => bytes[i] === byte))
  try {
    const text = new TextDecoder(mark?.encoding, { fatal: true }).decode(bytes)
    return text.includes('\0') ? failed(problem('fileNotText')) : ok(text)
  } catch {
    return failed(problem('fileNotText'))
  }
}
