import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { DrawnEdge } from '../pictures/DrawnEdge.tsx'
import { useFilled } from '../useFilled.ts'
import { useRefNames } from '../usePlaceNames.ts'
import type { AskedProps } from './Asked.tsx'

/** What was said beside what came, and how far off: in figures, then in words. */
export const Verdict = (props: AskedProps) => {
  const t = useTexts()
  const { ask, findings, teaching } = props
  const { mark } = teaching
  const text = useFilled(findings?.values ?? null)
  if (!mark) return null
  return (
    <div className="teach-verdict" data-right={mark.right}>
      <p>
        <strong>{t(mark.right ? 'teach:right' : 'teach:notYet')}</strong> <Off {...props} />
      </p>
      <p>{text(mark.right ? ask.right : ask.wrong)}</p>
      <Compared {...props} />
    </div>
  )
}

/** How far off, where something is measured. */
const Off = ({ ask, findings, teaching: { mark, answer } }: AskedProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const nameOf = useRefNames()
  if (!mark || mark.off === null) return null
  if (ask.kind === 'draw') return t('teach:off.draw', { off: inWords(Math.abs(mark.off), 'mm', 2) })
  if (ask.kind === 'choose') return null
  const shown = findings?.values[ask.figure]
  if (!shown || mark.is === null) return null
  const write = (value: number) => inWords(value, shown.unit, shown.decimals)
  const off = write(Math.abs(mark.off))
  if (ask.kind === 'predict' && answer?.kind === 'predict')
    return t('teach:off.predict', { said: write(answer.value), came: write(mark.is), off })
  return mark.right ? null : t(mark.off > 0 ? 'teach:off.more' : 'teach:off.less', { off, name: nameOf(ask.figure) })
}

/** Drawn and come about, one over the other. */
const Compared = ({ findings, teaching: { answer } }: AskedProps) => {
  const t = useTexts()
  if (answer?.kind !== 'draw' || !findings?.edgeMm) return null
  const foremost = Math.min(...findings.edgeMm)
  const cameMm = findings.edgeMm.map((v) => v - foremost)
  const mostMm = Math.max(...answer.behindMm, ...cameMm, 0.1) * 1.1
  return <DrawnEdge drawnMm={answer.behindMm} cameMm={cameMm} mostMm={mostMm} label={t('teach:draw.compared')} />
}
