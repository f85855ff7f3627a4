import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron'

/**
 * All that a page can reach, and no more: call, cancel, onEvent, as `contract/transport.ts` says. Blob addresses need no
 * help from here. Nothing of Electron itself is handed to the page.
 */
contextBridge.exposeInMainWorld('camberwright', {
  call: (name: string, input: unknown, callId: string): Promise<unknown> =>
    ipcRenderer.invoke('call', name, input, callId),
  cancel: (callId: string): void => ipcRenderer.send('cancel', callId),
  onEvent: (listener: (event: unknown) => void): (() => void) => {
    const hear = (_: IpcRendererEvent, event: unknown): void => listener(event)
    ipcRenderer.on('event', hear)
    return () => void ipcRenderer.off('event', hear)
  },
})
