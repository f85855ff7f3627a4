import { useEffect, useState } from 'react'
import type { Tool } from '../../main/contract/entities.ts'
import type { Life } from '../../main/contract/life.ts'
import { useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

/** How many grinds an iron has left, with its doubt and what that rests on; only where its length was measured. */
export const LifeLeft = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const figures = useFigures()
  const life = useLife(tool)
  if (life === undefined) return null
  if (life === null) return <p className="muted detail-life">{t('rack:life.unknown')}</p>
  const { grinds, from, to, perGrindMm, by, counted, lengthOn, takenSinceMm } = life
  return (
    <p className="detail-life">
      {t('rack:life.left', { count: grinds, from, to })}{' '}
      <span className="muted">
        {t(`rack:life.${by}`, { count: counted, each: figures.inWords(perGrindMm, 'mm', 2) })}{' '}
        {lengthOn !== null &&
          takenSinceMm > 0 &&
          t('rack:life.since', { day: shortDate(lengthOn), taken: figures.inWords(takenSinceMm, 'mm', 1) })}
      </span>
    </p>
  )
}

/** @returns undefined where the length is not known or nothing was answered yet; null: nobody can tell */
const useLife = ({ id, lengthLeftMm }: Tool): Life | null | undefined => {
  const changes = useApp((app) => app.rackChanges)
  const [life, setLife] = useState<Life | null>()
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the trigger
  useEffect(() => {
    let wanted = true
    setLife((before) => (lengthLeftMm === null ? undefined : before))
    if (lengthLeftMm !== null)
      void call('tool.life', { id }).then((answer) => {
        if (wanted && answer.ok) setLife(answer.value)
      })
    return () => {
      wanted = false
    }
  }, [id, lengthLeftMm, changes])
  return life
}
