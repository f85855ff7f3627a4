import type { Problem } from '../../geometry/result.ts'
import { useTexts } from '../ui/texts.tsx'

/** Whether the worker itself is what failed. */
export const isLost = (problems: readonly Problem[]): boolean => problems.some(({ code }) => code === 'solverLost')

/** Says that the grind's worker is lost, and makes it anew. */
export const Lost = ({ onRecover }: { readonly onRecover: () => void }) => {
  const t = useTexts()
  return (
    <div className="run-lost" role="alert">
      <p className="run-trouble">{t('grind:lost.says')}</p>
      <button type="button" className="key" onClick={onRecover}>
        {t('grind:lost.again')}
      </button>
    </div>
  )
}
