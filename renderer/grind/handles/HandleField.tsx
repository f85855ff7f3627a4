import { type KeyboardEvent, type ReactNode, useEffect, useRef } from 'react'

interface HandleFieldProps {
  readonly onDone: () => void
  readonly children: ReactNode
}

/** Puts the caret into a field beside its handle. A figure that was not taken keeps the field open, to be mended. */
export const HandleField = ({ onDone, children }: HandleFieldProps) => {
  const box = useRef<HTMLDivElement>(null)
  const touched = useRef(false)
  useEffect(() => box.current?.querySelector('input')?.select(), [])
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' || (event.key === 'Enter' && !touched.current)) onDone()
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only listens to what its field does
    <div
      className="handle-field"
      ref={box}
      onChange={() => {
        touched.current = true
      }}
      onKeyDown={key}
      onBlur={() => !touched.current && onDone()}
    >
      {children}
    </div>
  )
}
