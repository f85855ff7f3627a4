import type { Session, WebContents } from 'electron'

/** A page needs no camera, no place, no notices, no devices: nothing of the kind is ever granted. */
export const denyPermissions = (session: Session): void => {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
}

/** The window stays on its page: no other address, no second window, no page within the page. */
export const keepToPage = (contents: WebContents): void => {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
}
