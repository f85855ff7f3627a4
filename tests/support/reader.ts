import type { Page } from '@playwright/test'
import encodeQr from 'qr'

/** The keys of a keyboard of the United States, to which readers come set. */
const codeOf = (sign: string): string => {
  if (/[A-Z]/i.test(sign)) return `Key${sign.toUpperCase()}`
  return /\d/.test(sign) ? `Digit${sign}` : ({ ':': 'Semicolon', '/': 'Slash' }[sign] ?? '')
}

/** From sign to sign (s), by the clock that the browser is told: a busy machine makes no reader slow. */
const BETWEEN_S = 0.008

/**
 * Plays a reader at the keyboard: every sign, then Enter.
 * @param shown what the system makes of a sign, where another keyboard is chosen in it
 */
export const readAtKeyboard = async (page: Page, text: string, shown: Readonly<Record<string, string>> = {}) => {
  const browser = await page.context().newCDPSession(page)
  const signs = Array.from(text, (sign) => ({
    key: shown[sign] ?? sign,
    text: shown[sign] ?? sign,
    code: codeOf(sign),
    modifiers: sign === ':' ? 8 : 0,
  }))
  const enter = { key: 'Enter', text: '\r', code: 'Enter', windowsVirtualKeyCode: 13, modifiers: 0 }
  const fromS = Date.now() / 1000
  await Promise.all(
    [...signs, enter].flatMap((pressed, i) => {
      const timestamp = fromS + i * BETWEEN_S
      return [
        browser.send('Input.dispatchKeyEvent', { type: 'keyDown', ...pressed, timestamp }),
        browser.send('Input.dispatchKeyEvent', { type: 'keyUp', key: pressed.key, code: pressed.code, timestamp }),
      ]
    }),
  )
  await browser.detach()
}

/** Where a picture of a code is black. @param side of the picture, a square, in pixels @param codeSide of the code within it */
const isBlack = (text: string, side: number, codeSide: number) => {
  const squares = encodeQr(text, 'raw', { ecc: 'quartile', border: 4 })
  const from = (side - codeSide) / 2
  return (x: number, y: number): boolean => {
    const at = (place: number) => Math.floor(((place - from) / codeSide) * squares.length)
    return squares[at(y)]?.[at(x)] ?? false
  }
}

/** @returns a film of one picture, grey with a label's code on it, in the form that Chromium's pretended camera plays */
export const filmOf = (text: string, side = 480): Buffer => {
  const black = isBlack(text, side, side * 0.5)
  const luma = Buffer.alloc(side * side, 210)
  for (let y = 0; y < side; y += 1) for (let x = 0; x < side; x += 1) if (black(x, y)) luma[y * side + x] = 40
  const colours = Buffer.alloc((side * side) / 2, 128)
  const head = Buffer.from(`YUV4MPEG2 W${side} H${side} F10:1 Ip A1:1 C420jpeg\nFRAME\n`)
  return Buffer.concat([head, luma, colours])
}
