import type { EventEmitter } from 'node:events'
import type * as Electron from 'electron'
import type { PreloadElectron } from './double/page.ts'
import type * as Double from './electronDouble.ts'

/**
 * Holds the double against Electron's own declarations, when types are checked: a member that Electron does not have, or
 * that would not take what Electron's takes, or whose answer is not part of Electron's, is an error here that names it.
 */

// biome-ignore lint/suspicious/noExplicitAny: only so do all functions extend it, whatever they take
type Takes = (...args: any[]) => unknown

/** An answer may be a part of Electron's: what the program reads is there, or it would fail. */
type IsPartOf<Played, Real> = Played extends null | undefined
  ? true
  : Played extends Promise<infer P>
    ? Real extends Promise<infer R>
      ? IsPartOf<P, R>
      : false
    : Played extends readonly (infer P)[]
      ? Real extends readonly (infer R)[]
        ? IsPartOf<P, R>
        : false
      : Played extends object
        ? [Drifted<Played, Real>] extends [never]
          ? true
          : false
        : [Played] extends [Real]
          ? true
          : false

type FitsCall<Played extends Takes, Real extends Takes> = Played extends (...args: Parameters<Real>) => unknown
  ? IsPartOf<ReturnType<Played>, ReturnType<Real>>
  : false

type Fits<Played, Real> = Played extends Takes
  ? Real extends Takes
    ? FitsCall<Played, Real>
    : false
  : IsPartOf<Played, Real>

/** What every emitter and every function has is Node's and the language's, not Electron's. */
type Member<Played> = Exclude<keyof Played, keyof EventEmitter | keyof Takes | `stage${string}`>

/** Names of what has drifted. */
type Drifted<Played, Real> = {
  [K in Member<Played>]: K extends keyof Real ? (Fits<Played[K], Real[K]> extends true ? never : K) : K
}[Member<Played>]

type Nothing<Names extends never> = Names

type Real = typeof Electron
export type Checked = [
  Nothing<Drifted<typeof Double.app, Electron.App>>,
  Nothing<Drifted<typeof Double.session.defaultSession, Electron.Session>>,
  Nothing<Drifted<typeof Double.dialog, Electron.Dialog>>,
  Nothing<Drifted<typeof Double.Menu, Real['Menu']>>,
  Nothing<Drifted<typeof Double.nativeTheme, Electron.NativeTheme>>,
  Nothing<Drifted<typeof Double.screen, Electron.Screen>>,
  Nothing<Drifted<typeof Double.systemPreferences, Electron.SystemPreferences>>,
  Nothing<Drifted<typeof Double.ipcMain, Electron.IpcMain>>,
  Nothing<Drifted<typeof Double.protocol, Electron.Protocol>>,
  Nothing<Drifted<Double.BrowserWindow, Electron.BrowserWindow>>,
  Nothing<Drifted<PreloadElectron, Pick<typeof Electron, 'ipcRenderer' | 'contextBridge'>>>,
  Nothing<Exclude<keyof typeof Double, keyof Real>>,
]
