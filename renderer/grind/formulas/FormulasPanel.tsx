import { useMemo } from 'react'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { PanelProps } from '../GrindBar.tsx'
import { type FormulaLine, formulaLines } from './formulas.ts'
import './formulas.css'

/** The formulas behind the figures, with this job's figures put in. */
export const FormulasPanel = ({ running }: PanelProps) => {
  const t = useTexts()
  const figures = useFigures()
  const grind = useApp((app) => app.report?.grind ?? null)
  const { job, setUp } = running
  const lines = useMemo(() => formulaLines({ job, setUp, grind, figures }), [job, setUp, grind, figures])
  return (
    <div className="formulas">
      <dl>
        {lines.map((line) => (
          <Formula key={line.name} line={line} />
        ))}
      </dl>
      <p className="muted">{t('formulas:note')}</p>
    </div>
  )
}

const Formula = ({ line }: { readonly line: FormulaLine }) => {
  const t = useTexts()
  const { name, params, comesTo } = line
  const told = params.share === '' ? `formulas:${name}.noteUnknown` : `formulas:${name}.note`
  return (
    <div className="formula" data-formula={name}>
      <dt>{t(`formulas:${name}.what`)}</dt>
      <dd>
        <span className="formula-line">{t(`formulas:${name}.formula`)}</span>
        <span className="formula-line">
          {t(`formulas:${name}.figures`, params)} = <strong>{comesTo}</strong>
        </span>
        <span className="formula-note">{t([`${told}.${params.side ?? ''}`, told], params)}</span>
      </dd>
    </div>
  )
}
