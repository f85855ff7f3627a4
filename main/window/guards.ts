import type { Session, WebContents, WebPreferences } from 'electron'
import { CLASS_HASH } from '../contract/classView.ts'
import { isOwnAddress, isOwnPage } from './pageOrigin.ts'

/** What the page may ask for by name alone: that the screen stays on while a grind plays. It gives nothing away. */
const GRANTED = 'screen-wake-lock'

/** The camera's picture, for reading labels, and that alone: never sound, nor both together. */
const isCamera = (permission: string, media: readonly string[]): boolean =>
  permission === 'media' && media.length > 0 && media.every((each) => each === 'video')

const mediaOf = (details: object): readonly string[] => {
  if ('mediaTypes' in details) return details.mediaTypes as readonly string[]
  return 'mediaType' in details ? [String(details.mediaType)] : []
}

/** What is told of whoever asks; a look-up may come without the address. */
interface Asker {
  readonly isMainFrame?: boolean
  readonly requestingUrl?: string
}

/** Whether the program's own page asks, and not a frame within it. @param origin where that alone is told */
const isOwnAsker = ({ isMainFrame, requestingUrl }: Asker, origin = ''): boolean =>
  isMainFrame !== false && isOwnPage(requestingUrl ?? `${origin.replace(/\/$/, '')}/`)

/**
 * A page needs no microphone, no place, no notices, no devices: nothing of the kind is ever granted. The screen may be kept
 * on; for the camera the user is asked.
 *
 * @param askCamera asks the user @returns whether the page may see
 */
export const guardPermissions = (session: Session, askCamera: () => Promise<boolean>): void => {
  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    if (!isOwnAsker(details)) return answer(false)
    if (!isCamera(permission, mediaOf(details))) return answer(permission === GRANTED)
    void askCamera().then(answer, () => answer(false))
  })
  // What is only looked up tells whether it could be asked for.
  session.setPermissionCheckHandler(
    (_contents, permission, origin, details) =>
      isOwnAsker(details, origin) && (permission === GRANTED || isCamera(permission, mediaOf(details))),
  )
  session.setDevicePermissionHandler(() => false)
}

/** The program is whole without a network: whatever does not come from itself is not fetched, by whichever way. */
export const keepOffNetwork = ({ webRequest }: Session): void =>
  webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isOwnAddress(url) }))

const isClassView = (url: string): boolean => isOwnPage(url) && new URL(url).hash === CLASS_HASH

/**
 * A window stays on its page: no other address, no page within the page, and no second window but the class view, which
 * is as closed in as the first.
 */
export const keepToPage = (contents: WebContents, webPreferences: WebPreferences): void => {
  contents.setWindowOpenHandler(({ url }) =>
    isClassView(url) ? { action: 'allow', overrideBrowserWindowOptions: { webPreferences } } : { action: 'deny' },
  )
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-frame-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
}
