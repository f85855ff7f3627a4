/** A small iron, back up and edge down, with its dot: which corner is which, at one glance. */
export const IronMark = ({ dot }: { readonly dot: 'left' | 'right' }) => (
  <svg className="iron-mark" viewBox="0 0 16 26" width="16" height="26" aria-hidden="true">
    <path d="M1 25V6l4-5h6l4 5v19z" />
    <circle cx={dot === 'left' ? 4.5 : 11.5} cy="21" r="2.6" />
  </svg>
)
