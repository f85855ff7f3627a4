import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import { LOOPBACK } from './address.ts'

/** Bytes of chance in a code or token: 256 bits cannot be guessed. */
const SECRET_BYTES = 32

/** Wrong codes before the standing one is void: whoever sends that many is guessing. */
export const MOST_WRONG_CODES = 100

const newSecret = (): string => randomBytes(SECRET_BYTES).toString('base64url')

const digest = (text: string): Buffer => createHash('sha256').update(text).digest()

/** Compared in equal time whatever is given, so that answers do not tell how much of it was right. */
const isSame = (given: string, secret: string): boolean => timingSafeEqual(digest(given), digest(secret))

/** Who may use the loopback host: whoever started it, and no other user or program of this machine. */
export interface Admission {
  /** A fresh code for one start; the code before it is no longer good. */
  newCode(): string
  /** @returns the cookie for whoever brings the code that stands, once; else null. Too many wrong ones void it */
  admit(code: string): string | null
  /** For whoever can read the data folder: a second start asks for a code with it. Never in an address. */
  readonly key: string
  /** @param header `Bearer` and the key */
  hasKey(header: string | undefined): boolean
  /** @param header the request's cookies */
  isAdmitted(header: string | undefined): boolean
}

/** @returns an address that lets whoever opens it first in; the one before it is no longer good */
export const startAddress = (port: number, admission: Admission): string =>
  `http://${LOOPBACK}:${port}/start?code=${admission.newCode()}`

/** @param port named in the cookie, since browsers send cookies of one port to every other */
export const createAdmission = (port: number): Admission => {
  const token = newSecret()
  const key = newSecret()
  const name = `camberwright-${port}`
  let standing: string | null = null
  let wrong = 0
  const noteWrong = (): null => {
    wrong += 1
    if (wrong >= MOST_WRONG_CODES) standing = null
    return null
  }
  return {
    newCode: () => {
      standing = newSecret()
      wrong = 0
      return standing
    },
    admit: (code) => {
      if (standing === null || !isSame(code, standing)) return noteWrong()
      standing = null
      return `${name}=${token}; HttpOnly; SameSite=Strict; Path=/`
    },
    key,
    hasKey: (header = '') => isSame(header, `Bearer ${key}`),
    isAdmitted: (header = '') =>
      header
        .split(';')
        .map((cookie) => cookie.trim())
        .some((cookie) => cookie.startsWith(`${name}=`) && isSame(cookie.slice(name.length + 1), token)),
  }
}
