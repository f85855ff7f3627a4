import type { Report } from '../../geometry/report.ts'
import type { BenchLogDraft, Tool } from '../../main/contract/entities.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { ShownFigures } from './ShownFigures.tsx'
import { heldAgainst, sentenceOf } from './sentence.ts'
import './shown.css'
import type { Showing } from './shown.ts'

interface ShownEdgeProps {
  readonly method: BenchLogDraft['method']
  readonly tool: Tool
  readonly report: Report | null
  readonly stage: BenchLogDraft['stage']
  readonly showing: Showing
}

/** What the leaves show: a sentence, the figures and how sure they are, and what to know of them. */
export const ShownEdge = ({ tool, report, method, stage, showing }: ShownEdgeProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const telling = { t, length: (mm: number) => inWords(mm, 'mm', 2), ...heldAgainst(tool, report) }
  const { shown } = showing
  return (
    <section className="shown" aria-label={t('measure:shown.heading')}>
      <p className="sentence" role="status">
        {sentenceOf(showing, method, stage, telling)}
      </p>
      <div className="shown-row">
        {shown && <ShownFigures shown={shown} />}
        {shown && shown.edge.notices.length > 0 && (
          <ul className="shown-notices">
            {shown.edge.notices.map(({ code, params }) => (
              <li key={code} className="caution">
                {t(`problems:${code}`, { ...params })}
              </li>
            ))}
          </ul>
        )}
      </div>
    </section>
  )
}
