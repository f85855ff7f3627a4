import type { Session, WebContents } from 'electron'

/** The one thing the page may ask for: that the screen stays on while a grind plays. It gives nothing away. */
const GRANTED = 'screen-wake-lock'

/** A page needs no camera, no place, no notices, no devices: nothing of the kind is ever granted. */
export const denyPermissions = (session: Session): void => {
  session.setPermissionRequestHandler((_contents, permission, answer) => answer(permission === GRANTED))
  session.setPermissionCheckHandler((_contents, permission) => permission === GRANTED)
  session.setDevicePermissionHandler(() => false)
}

/** The window stays on its page: no other address, no second window, no page within the page. */
export const keepToPage = (contents: WebContents): void => {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
}
