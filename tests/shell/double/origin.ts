/** An https origin takes the place of the program's own scheme, which Chromium does not know. */
export const OWN_ORIGIN = 'camberwright://app'
export const STAGED_ORIGIN = 'https://app.camberwright.test'

export const asOwn = (url: string): string => url.replace(STAGED_ORIGIN, OWN_ORIGIN)
export const asStaged = (url: string): string => url.replace(OWN_ORIGIN, STAGED_ORIGIN)
