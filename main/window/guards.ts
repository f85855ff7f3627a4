import type { Session, WebContents } from 'electron'

/** What the page may ask for by name alone: that the screen stays on while a grind plays. It gives nothing away. */
const GRANTED = 'screen-wake-lock'

/** The camera's picture, for reading labels, and that alone: never sound, nor both together. */
const isCamera = (permission: string, media: readonly string[]): boolean =>
  permission === 'media' && media.length > 0 && media.every((each) => each === 'video')

const mediaOf = (details: object): readonly string[] => {
  if ('mediaTypes' in details) return details.mediaTypes as readonly string[]
  return 'mediaType' in details ? [String(details.mediaType)] : []
}

/** A page needs no microphone, no place, no notices, no devices: nothing of the kind is ever granted. */
export const denyPermissions = (session: Session): void => {
  const may = (permission: string, details: object): boolean =>
    permission === GRANTED || isCamera(permission, mediaOf(details))
  session.setPermissionRequestHandler((_contents, permission, answer, details) => answer(may(permission, details)))
  session.setPermissionCheckHandler((_contents, permission, _origin, details) => may(permission, details))
  session.setDevicePermissionHandler(() => false)
}

/** The window stays on its page: no other address, no second window, no page within the page. */
export const keepToPage = (contents: WebContents): void => {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
}
