import type { IpcRenderer } from 'electron'

interface Staged {
  stageHear: (channel: string, args: readonly unknown[]) => void
  stageInvoke(channel: string, args: readonly unknown[]): Promise<unknown>
  stageSend(channel: string, args: readonly unknown[]): Promise<void>
  stagePermit(permission: string, details?: object): Promise<boolean>
}

type Hear = Parameters<IpcRenderer['on']>[1]

/** Electron as a sandboxed preload meets it. */
export interface PreloadElectron {
  readonly ipcRenderer: {
    invoke(channel: string, ...args: unknown[]): Promise<unknown>
    send(channel: string, ...args: unknown[]): void
    on(channel: string, listener: Hear): void
    off(channel: string, listener: Hear): void
  }
  readonly contextBridge: { exposeInMainWorld(name: string, api: unknown): void }
}

/** Run in the page before anything else: Electron's half of the preload. It may use nothing from outside itself. */
const stageElectron = (runPreload: (require: (name: string) => PreloadElectron) => void): void => {
  const staged = window as unknown as Staged
  const heard = new Map<string, Hear[]>()
  staged.stageHear = (channel, args) => {
    for (const listener of heard.get(channel) ?? []) listener({} as never, ...args)
  }
  const ipcRenderer = {
    invoke: (channel: string, ...args: unknown[]) => staged.stageInvoke(channel, args),
    send: (channel: string, ...args: unknown[]) => void staged.stageSend(channel, args),
    on: (channel: string, listener: Hear) => void heard.set(channel, [...(heard.get(channel) ?? []), listener]),
    off: (channel: string, listener: Hear) =>
      void heard.set(
        channel,
        (heard.get(channel) ?? []).filter((one) => one !== listener),
      ),
  }
  const contextBridge = {
    exposeInMainWorld: (name: string, api: unknown) => void Object.defineProperty(window, name, { value: api }),
  }
  const refusal = () => new DOMException('denied', 'NotAllowedError')
  Notification.requestPermission = async () => ((await staged.stagePermit('notifications')) ? 'granted' : 'denied')
  navigator.wakeLock.request = async (type = 'screen') => {
    if (!(await staged.stagePermit(`${type}-wake-lock`))) throw refusal()
    return Object.assign(new EventTarget(), { release: async () => undefined }) as unknown as WakeLockSentinel
  }
  const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices)
  navigator.mediaDevices.getUserMedia = async (asked = {}) => {
    const mediaTypes = (['video', 'audio'] as const).filter((each) => asked[each])
    if (!(await staged.stagePermit('media', { mediaTypes }))) throw refusal()
    return ask(asked)
  }
  runPreload((name) => {
    if (name !== 'electron') throw new Error(`a sandboxed preload cannot require ${name}`)
    return { contextBridge, ipcRenderer }
  })
}

/** @param preload the built preload's text @returns what the page runs before its own scripts */
export const preloadScript = (preload: string): string => `(${stageElectron})((require) => {${preload}\n})`
