import type { Tool } from '../../main/contract/entities.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { toolDraftOf } from './drafts.ts'
import { saveTool } from './edits.ts'

type Curve = Tool['curves'][number]

const isInUse = (tool: Tool, { reliefMm, shavingDepthMm }: Curve): boolean =>
  tool.reliefMm === reliefMm && tool.shavingDepthMm === shavingDepthMm

/** The curves of an iron by purpose; one of them can be made the one that it is ground to. */
export const ToolCurves = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const figures = useFigures()
  const purposes = useApp((app) => app.purposes)
  if (tool.curves.length === 0) return null
  const use = async ({ reliefMm, shavingDepthMm }: Curve): Promise<void> => {
    const saved = await saveTool(tool, { ...toolDraftOf(tool), reliefMm, shavingDepthMm })
    if (!saved.ok && saved.problems[0]) sayProblem(saved.problems[0])
  }
  return (
    <section className="detail-list" aria-label={t('rack:field.curves')}>
      <h3>{t('rack:field.curves')}</h3>
      <ul>
        {tool.curves.map((curve) => {
          const purpose = purposes.find(({ id }) => id === curve.purposeId)?.name ?? ''
          const relief = figures.inWords(curve.reliefMm, 'mm', 2)
          const shaving = figures.inWords(curve.shavingDepthMm, 'mm', 2)
          return (
            <li key={curve.purposeId}>
              {t('rack:curves.line', { purpose, relief, shaving })}{' '}
              {isInUse(tool, curve) ? (
                <span className="muted">{t('rack:curves.inUse')}</span>
              ) : (
                <button
                  type="button"
                  className="word"
                  aria-label={t('rack:curves.useOf', { purpose })}
                  onClick={() => void use(curve)}
                >
                  {t('rack:curves.use')}
                </button>
              )}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
