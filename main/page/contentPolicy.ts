/**
 * What a page of this program may load and run: its own files and nothing else, on every host. No code made from text,
 * no style in attributes, no other place to send anything to.
 */
const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** What a page may ask its user for: the camera, to read labels, and that the screen stays on. Frames within it may ask for nothing. */
const permissionsPolicy = [
  'camera=(self)',
  'screen-wake-lock=(self)',
  ...['microphone', 'geolocation', 'display-capture', 'midi', 'usb', 'serial', 'hid', 'bluetooth', 'payment'].map(
    (each) => `${each}=()`,
  ),
].join(', ')

/** Sent with every answer of every host. */
export const guardHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy,
  'permissions-policy': permissionsPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'cache-control': 'no-store',
}
