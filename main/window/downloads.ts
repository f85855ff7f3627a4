import type { DownloadItem, Session } from 'electron'
import type { HostEvent } from '../contract/events.ts'

/** The part of a window that is told. */
interface Told {
  readonly webContents: { send(channel: string, event: HostEvent): void }
}

/**
 * A file that the page hands over is asked a place for, and written, by the window's engine, which leaves nothing half
 * written. Where it could not write, a full disk above all, the page is told; a place that was not given is no failure.
 */
export const tellUnwritten = (session: Session, windows: () => readonly Told[]): void => {
  const watch = (item: DownloadItem): void => {
    item.once('done', (_event, state) => {
      if (state !== 'interrupted') return
      for (const { webContents } of windows())
        webContents.send('event', { type: 'unwritten', file: item.getFilename() })
    })
  }
  session.on('will-download', (_event, item) => watch(item))
}
