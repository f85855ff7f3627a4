/** Something written in, as it was before a reader wrote into it. */
interface Written {
  restore(): void
}

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

/** @returns the field that keys go to, or null where they go to none */
const fieldOf = (target: EventTarget | null): Field | null => {
  const isField =
    target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
  return isField && !('type' in target && ['checkbox', 'radio', 'range', 'file'].includes(target.type)) ? target : null
}

/** React listens to what the browser's own setter is told, so that is what is used. */
const setValue = (field: Field, value: string): void => {
  const own = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')
  own?.set?.call(field, value)
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }))
}

/** Remembers a field's text and cursor. @returns null where the target is no field to write in */
export const rememberField = (target: EventTarget | null): Written | null => {
  const field = fieldOf(target)
  if (!field) return null
  const { value } = field
  const [from, to] = field instanceof HTMLSelectElement ? [null, null] : [field.selectionStart, field.selectionEnd]
  return {
    restore: () => {
      if (field.value !== value) setValue(field, value)
      if (!(field instanceof HTMLSelectElement) && from !== null) field.setSelectionRange(from, to)
    },
  }
}
