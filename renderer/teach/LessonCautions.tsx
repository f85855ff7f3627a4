import type { LessonCaution } from '../../geometry/lesson/lesson.ts'
import { useTexts } from '../ui/texts.tsx'

/** Every caution of the program, in the order of the work; words under `teach:caution.list`. */
const wholeList = [
  'stopped',
  'screen',
  'eyes',
  'clothes',
  'speed',
  'look',
  'aside',
  'guards',
  'rotation',
  'lower',
  'fingers',
  'side',
  'hot',
  'dust',
  'water',
  'current',
  'edge',
  'supervised',
] as const

/** Cautions that stand with a step: there as long as it is, nothing to dismiss. */
export const LessonCautions = ({ names }: { readonly names: readonly LessonCaution[] }) => {
  const t = useTexts()
  if (names.length === 0) return null
  if (names.includes('all'))
    return (
      <section className="teach-cautions" aria-label={t('common:cautions')}>
        <ul>
          {wholeList.map((name) => (
            <li key={name}>{t(`teach:caution.list.${name}`)}</li>
          ))}
        </ul>
        <p>
          <strong>{t('teach:rules')}</strong>
        </p>
      </section>
    )
  return (
    <>
      {names.map((name) => (
        <p key={name} className="teach-caution">
          <span aria-hidden="true">!</span> {t(`teach:caution.${name}`)}
        </p>
      ))}
    </>
  )
}
