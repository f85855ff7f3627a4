import { rmSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { request } from 'node:http'
import { join } from 'node:path'
import { z } from 'zod'
import { LOOPBACK } from '../loopback/address.ts'

/** Where the host that serves a data folder can be asked for an address. Whoever reads this can read the data beside it. */
const runningSchema = z.object({ port: z.int().min(1).max(65535), key: z.string() })
type Running = z.output<typeof runningSchema>

const pathOf = (dataDir: string): string => join(dataDir, 'running.json')

/** A host on this machine answers at once; what does not is something else that has its port now. */
const ANSWER_MS = 2_000
/** An address takes some 80 bytes. */
const MOST_ADDRESS_BYTES = 1_000

/** Leaves word for a second start; it is the user's alone to read. Where it cannot be written, a second start only says that the data is in use. */
export const noteRunning = (dataDir: string, running: Running): void => {
  try {
    // What a killed one left may be open to others.
    forgetRunning(dataDir)
    writeFileSync(pathOf(dataDir), `${JSON.stringify(running)}\n`, { mode: 0o600 })
  } catch {}
}

export const forgetRunning = (dataDir: string): void => rmSync(pathOf(dataDir), { force: true })

const isAddress = (text: string, port: number): boolean => text.startsWith(`http://${LOOPBACK}:${port}/start?code=`)

const ask = ({ port, key }: Running): Promise<string | null> =>
  new Promise((resolve) => {
    const headers = { authorization: `Bearer ${key}` }
    const asked = request({ host: LOOPBACK, port, path: '/again', method: 'POST', headers, timeout: ANSWER_MS })
    asked.on('response', async (response) => {
      let text = ''
      for await (const part of response.setEncoding('utf8')) if (text.length < MOST_ADDRESS_BYTES) text += part
      resolve(response.statusCode === 200 && isAddress(text, port) ? text : null)
    })
    asked.on('timeout', () => asked.destroy())
    asked.on('error', () => resolve(null))
    asked.end()
  })

/** @returns a fresh address from the host that serves a data folder; null where none does, or it cannot be asked */
export const askRunning = async (dataDir: string): Promise<string | null> => {
  try {
    return await ask(runningSchema.parse(JSON.parse(await readFile(pathOf(dataDir), 'utf8'))))
  } catch {
    return null
  }
}
