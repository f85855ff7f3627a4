import type { ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { offerFile } from '../opened/offerFile.ts'
import { type LoopbackHost, startLoopbackHost } from '../serve.ts'
import { type ServiceClient, startServices } from '../serviceClient.ts'
import { findBrowser, hasDisplay, openBrowserWindow } from './browserWindow.ts'
import { thisMachine } from './dataFolder.ts'
import type { StartOptions } from './options.ts'
import { askRunning, forgetRunning, noteRunning } from './running.ts'
import { askedToStop } from './stopping.ts'
import { userName } from './userName.ts'

/** A browser that ends badly sooner than this never opened a window. */
const OPENING_MS = 5_000

/** Where the host says what it does. @param key in `hosts:start` */
export type Say = (key: string, params?: Readonly<Record<string, string | number>>) => void

const portProblem = (error: unknown, port: number): Problem =>
  problem('startPortTaken', '--port', { port, detail: error instanceof Error ? error.message : String(error) })

const listen = async (services: ServiceClient, root: string, port: number): Promise<Result<LoopbackHost>> => {
  try {
    return ok(await startLoopbackHost({ services, pageFolder: join(root, 'out', 'renderer'), port }))
  } catch (error) {
    return failed(portProblem(error, port))
  }
}

/** @returns whether a window had been open, or is no longer wanted */
const untilClosed = (window: ChildProcess, stop: AbortSignal): Promise<boolean> => {
  const openedMs = performance.now()
  return new Promise((resolve) => {
    window.once('error', () => resolve(stop.aborted))
    window.once('exit', (code) => resolve(code === 0 || stop.aborted || performance.now() - openedMs > OPENING_MS))
  })
}

const printAddress = (host: LoopbackHost, say: Say): Promise<never> => {
  say('address', { address: host.newStartAddress() })
  return new Promise(() => undefined)
}

/** Shows the program; resolves when its window is closed, which without a window is never. */
const show = async (host: LoopbackHost, options: StartOptions, say: Say, stop: AbortSignal): Promise<void> => {
  const machine = thisMachine()
  const browser = options.addressOnly || !hasDisplay(machine) ? null : findBrowser(machine)
  if (browser === null) return printAddress(host, say)
  const window = openBrowserWindow(browser, host.newStartAddress(), join(options.dataDir, 'browser'), stop)
  say('opened')
  if (!(await untilClosed(window, stop))) await printAddress(host, say)
}

/** A second start says where the data is open already; files to open are for that window. @returns whether it could */
const sayRunning = async (
  { dataDir, files }: StartOptions,
  problems: readonly Problem[],
  say: Say,
): Promise<boolean> => {
  if (files.length > 0 || !problems.some(({ code }) => code === 'folderInUse')) return false
  const address = await askRunning(dataDir)
  if (address !== null) say('again', { address })
  return address !== null
}

const serveUntilStopped = async (host: LoopbackHost, options: StartOptions, say: Say): Promise<void> => {
  const stop = new AbortController()
  noteRunning(options.dataDir, { port: host.port, key: host.key })
  await Promise.race([askedToStop(), show(host, options, say, stop.signal)])
  stop.abort()
  forgetRunning(options.dataDir)
  await host.close()
}

const offer = async (services: ServiceClient, path: string, say: Say): Promise<void> => {
  const offered = await offerFile(services, path)
  if (!offered.ok) say('notOpened', { file: path })
}

/**
 * Serves the program to a browser of this machine until its window is closed or the user stops it.
 *
 * @returns once everything is saved and closed, or what keeps it from starting
 */
export const runLoopbackHost = async (root: string, options: StartOptions, say: Say): Promise<Result<null>> => {
  const services = await startServices({ dataDir: options.dataDir, who: userName() })
  const problems = services.problems()
  if (await sayRunning(options, problems, say)) return ok(null)
  const host = problems.length > 0 ? failed(...problems) : await listen(services, root, options.port)
  if (host.ok) for (const path of options.files) await offer(services, path, say)
  if (host.ok) await serveUntilStopped(host.value, options, say)
  await services.close()
  if (host.ok) say('stopped')
  return host.ok ? ok(null) : host
}
