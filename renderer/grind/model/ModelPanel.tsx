import { modelPage } from './modelPage.ts'
import { type Block, type Piece, sectionsOf } from './sections.ts'
import './model.css'

const tags = { plain: 'span', strong: 'strong', em: 'em', code: 'code' } as const

const Line = ({ pieces }: { readonly pieces: readonly Piece[] }) =>
  pieces.map(({ kind, text }) => {
    const Tag = tags[kind]
    return <Tag key={text}>{text}</Tag>
  })

const Shown = ({ kind, lines }: Block) =>
  kind === 'paragraph' ? (
    <p>
      <Line pieces={lines[0] ?? []} />
    </p>
  ) : (
    <ul>
      {lines.map((pieces) => (
        <li key={pieces.map(({ text }) => text).join('')}>
          <Line pieces={pieces} />
        </li>
      ))}
    </ul>
  )

/** What the model believes and what it leaves out: the engine's own page, word for word. */
const ModelPanel = () => (
  <div className="model-page">
    {sectionsOf(modelPage()).map(({ heading, blocks }) => (
      <div key={heading}>
        <h2 data-help={`model.${heading}`} tabIndex={-1}>
          {heading}
        </h2>
        {blocks.map((block) => (
          <Shown key={block.lines.flat()[0]?.text} {...block} />
        ))}
      </div>
    ))}
  </div>
)

export default ModelPanel
