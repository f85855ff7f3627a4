import { basename, join } from 'node:path'
import { app, dialog } from 'electron'
import type { TFunction } from 'i18next'
import { endingsOf, fileKindNames } from '../contract/fileKinds.ts'
import { offerFile } from '../opened/offerFile.ts'
import type { ServiceClient } from '../serviceClient.ts'
import { keepRecent, readRecent, withRecent } from './recentFiles.ts'

/** Opens files with the program's window, and knows which were opened lately. */
export interface Opener {
  recent(): readonly string[]
  open(paths: readonly string[]): Promise<void>
  /** Lets the user choose. */
  choose(): Promise<void>
  forget(): void
}

const filters = (t: TFunction) => [
  { name: t('hosts:opening.all'), extensions: lastEndings(fileKindNames.flatMap(endingsOf)) },
  ...fileKindNames.map((kind) => ({ name: t(`hosts:opening.kind.${kind}`), extensions: lastEndings(endingsOf(kind)) })),
]

/** Boxes of the system tell files apart by their last ending alone. */
const lastEndings = (endings: readonly string[]): string[] => [
  ...new Set(endings.map((ending) => ending.slice(ending.lastIndexOf('.') + 1))),
]

/** @param changed told when the list of those opened lately is another */
export const createOpener = (services: ServiceClient, t: TFunction, changed: () => void): Opener => {
  const place = join(app.getPath('userData'), 'recent.json')
  let recent = readRecent(place)

  const setRecent = (next: readonly string[]): void => {
    recent = next
    keepRecent(place, next)
    changed()
  }

  const openOne = async (path: string): Promise<void> => {
    const offered = await offerFile(services, path)
    if (offered.ok) {
      app.addRecentDocument(path)
      return setRecent(withRecent(recent, path))
    }
    setRecent(recent.filter((each) => each !== path))
    const [reason] = offered.problems
    await dialog.showMessageBox({
      type: 'warning',
      message: t('hosts:opening.cannot', { file: basename(path) }),
      detail: reason ? t(`problems:${reason.code}`, { ...reason.params }) : '',
      buttons: [t('common:close')],
    })
  }

  const open: Opener['open'] = async (paths) => {
    for (const path of paths) await openOne(path)
  }
  return {
    recent: () => recent,
    open,
    choose: async () => {
      const { canceled, filePaths } = await dialog.showOpenDialog({
        title: t('hosts:opening.title'),
        filters: filters(t),
        properties: ['openFile', 'multiSelections'],
      })
      if (!canceled) await open(filePaths)
    },
    forget: () => {
      app.clearRecentDocuments()
      setRecent([])
    },
  }
}
