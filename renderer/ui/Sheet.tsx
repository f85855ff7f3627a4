import { type ReactNode, useEffect, useId, useRef } from 'react'
import { clearSheetNote, useSheetNote } from './sheetNote.ts'
import { useTexts } from './texts.tsx'

interface SheetProps {
  readonly title: string
  readonly onClose: () => void
  readonly children: ReactNode
}

/** A sheet laid over the window: a native dialog, so focus stays in it and Escape closes it. */
export const Sheet = ({ title, onClose, children }: SheetProps) => {
  const t = useTexts()
  const id = useId()
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const element = dialog.current
    if (!element?.open) element?.showModal()
    return clearSheetNote
  }, [])
  // A sheet opened from this one tells its end to this one, too.
  return (
    <dialog
      ref={dialog}
      className="sheet"
      aria-labelledby={id}
      onClose={(event) => event.target === event.currentTarget && onClose()}
    >
      <div className="sheet-head">
        <h2 id={id}>{title}</h2>
        <button type="button" className="word" onClick={() => dialog.current?.close()}>
          {t('common:close')}
        </button>
      </div>
      <SheetNote />
      {children}
    </dialog>
  )
}

const SheetNote = () => {
  const t = useTexts()
  const note = useSheetNote((sheet) => sheet.note)
  return (
    note && (
      <p className="caution sheet-note" role="alert">
        {t(note.key, { ...note.params })}
      </p>
    )
  )
}
