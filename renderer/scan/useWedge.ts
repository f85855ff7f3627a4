import { useEffect } from 'react'
import type { ReadCode } from '../../main/contract/codes.ts'
import { rememberField } from './held.ts'
import { takeMark } from './marks.ts'
import { createWedge, READER_PAUSE_MS } from './wedge.ts'

/**
 * A reader that plays keyboard writes wherever the focus is. In a field its signs go in as typed ones would, and are taken out again once
 * they prove to be a mark; anywhere else they are held back for as long as a reader may pause, then let go if they were none, so that no
 * shortcut is done by a scan and none is lost.
 */
const listen = (): (() => void) => {
  const wedge = createWedge()
  const released = new WeakSet<Event>()
  let held: KeyboardEvent[] = []
  let written: ReturnType<typeof rememberField> = null
  let timer = 0

  const letGo = (): void => {
    clearTimeout(timer)
    const waiting = held
    held = []
    for (const { type, target, ...event } of waiting.map(copyOf)) {
      const again = new KeyboardEvent(type, event)
      released.add(again)
      target?.dispatchEvent(again)
    }
  }
  const hold = (event: KeyboardEvent): void => {
    event.stopImmediatePropagation()
    held.push(event)
    clearTimeout(timer)
    timer = window.setTimeout(letGo, READER_PAUSE_MS)
  }
  const begin = (event: KeyboardEvent): void => {
    letGo()
    written = rememberField(event.target)
  }
  const take = (event: KeyboardEvent, read: ReadCode): void => {
    clearTimeout(timer)
    held = []
    event.preventDefault()
    event.stopImmediatePropagation()
    written?.restore()
    takeMark(read)
  }
  const hear = (event: KeyboardEvent): void => {
    if (released.has(event) || isNoSign(event)) return
    const { key, code, shiftKey, timeStamp } = event
    const heard = wedge.hear({ key, code, shiftKey, timeMs: timeStamp })
    if (heard.kind === 'other') letGo()
    if (heard.kind === 'part' && heard.first) begin(event)
    if (heard.kind === 'part' && !written) hold(event)
    if (heard.kind === 'mark') take(event, heard.read)
  }
  addEventListener('keydown', hear, { capture: true })
  return () => {
    clearTimeout(timer)
    removeEventListener('keydown', hear, { capture: true })
  }
}

/** Held down, part of a composed sign, or a shortcut: readers do none of these. */
const isNoSign = ({ repeat, isComposing, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean =>
  repeat || isComposing || ctrlKey || metaKey || altKey

const copyOf = (event: KeyboardEvent) => {
  const { type, target, key, code, shiftKey, location } = event
  return { type, target, key, code, shiftKey, location, bubbles: true, cancelable: true, composed: true }
}

/** Hears readers in the whole window. */
export const useWedge = (): void => useEffect(listen, [])
