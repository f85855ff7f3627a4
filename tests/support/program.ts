import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from '@playwright/test'
import type {} from '../../renderer/app/transport.ts'
import { openForPages } from '../shell/openShell.ts'
import { startHostProcess } from './hostProcess.ts'

/** The running program that browser tests open pages of, whichever host it has. */
export interface Program {
  /** A page with nothing in it yet. */
  newPage(): Promise<Page>
  /** Puts the demo workshop back as it was. @returns the address that opens the program */
  freshAddress(page: Page): Promise<string>
  /** Closes a test's pages and forgets what they kept. */
  endTest(page: Page): Promise<void>
  stop(): Promise<void>
}

/** On the loopback host, in a process of its own. */
const onLoopback = async (browser: Browser): Promise<Program> => {
  const host = await startHostProcess()
  const profile = await browser.newContext()
  return {
    newPage: () => profile.newPage(),
    freshAddress: host.freshAddress,
    endTest: async () => {
      for (const page of profile.pages()) await page.close()
      await profile.clearCookies()
    },
    stop: async () => {
      await host.stop()
      await profile.close()
    },
  }
}

/** Run in the page: takes back, newest first, whatever was changed since the start. */
const putBack = async (): Promise<void> => {
  await window.camberwright?.call('workshop.open', { rack: 'demo' }, 'open')
  for (let undone = true; undone; ) {
    const answer = await window.camberwright?.call('change.undo', {}, 'undo')
    undone = answer?.ok === true
  }
}

/** In the desktop window, played by the double of Electron in this process. */
const inWindow = async (browser: Browser): Promise<Program> => {
  const dataDir = await mkdtemp(join(tmpdir(), 'camberwright-'))
  const shell = await openForPages(dataDir, browser)
  return {
    newPage: shell.newPage,
    freshAddress: async (page) => {
      await page.goto(shell.address)
      await page.evaluate(putBack)
      return shell.address
    },
    endTest: async (page) => {
      for (const other of page.context().pages()) if (other !== page) await other.close()
    },
    stop: async () => {
      await shell.close()
      await rm(dataDir, { recursive: true, force: true })
    },
  }
}

export const programs = { loopback: onLoopback, window: inWindow } as const
