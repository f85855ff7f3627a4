/** How long a notch shakes a device that can (ms): a tick, no buzz. */
const TICK_MS = 8

/** A notch under the finger, on devices that can; a page that nobody has touched yet may not. */
export const feelNotch = (): void => {
  if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(TICK_MS)
}
