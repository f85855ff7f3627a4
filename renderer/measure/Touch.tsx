interface TouchProps {
  readonly name: string
  readonly words: string
  readonly onTouch: () => void
}

/** A key that fills in a reading, with what it fills in beside it. */
export const Touch = ({ name, words, onTouch }: TouchProps) => (
  <p>
    <button type="button" className="key" onClick={onTouch}>
      {name}
    </button>
    <span className="muted">{words}</span>
  </p>
)
