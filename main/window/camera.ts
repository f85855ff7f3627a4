import { dialog, systemPreferences } from 'electron'
import type { TFunction } from 'i18next'

/** The key that lets the camera be used, of the two in the question. */
const YES = 1

const ask = async (t: TFunction): Promise<boolean> => {
  const { response } = await dialog.showMessageBox({
    type: 'question',
    message: t('hosts:camera.question'),
    detail: t('hosts:camera.detail'),
    buttons: [t('hosts:camera.no'), t('hosts:camera.yes')],
    defaultId: YES,
    cancelId: 0,
  })
  return response === YES
}

/** On a Mac the system has its own say, once for good. */
const systemLets = async (): Promise<boolean> =>
  process.platform !== 'darwin' || systemPreferences.askForMediaAccess('camera')

/**
 * @returns asks whether the camera may be used. A yes holds until the program is closed; a no for that one time; asked again
 * while the question stands, it is the same question
 */
export const cameraQuestion = (t: TFunction): (() => Promise<boolean>) => {
  let standing: Promise<boolean> | null = null
  const once = async (): Promise<boolean> => {
    const lets = (await ask(t)) && (await systemLets())
    if (!lets) standing = null
    return lets
  }
  return () => {
    standing ??= once()
    return standing
  }
}
