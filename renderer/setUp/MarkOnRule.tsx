import type { ReactNode, RefObject } from 'react'
import { hashFor } from '../app/route.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { StandingIron } from './ironMarks.ts'
import type { LabelledMark } from './ruleLabels.ts'

/** Height of a mark that has no label (px). */
const BARE_PX = 7
/** A mark can be hit this far to each side of its line (px). */
const HALF_PX = 5

const useWords = () => {
  const t = useTexts()
  const { inWords } = useFigures()
  const of = ({ tool, projectionMm }: StandingIron, words: 'mark' | 'listed' = 'mark') =>
    t(`setUp:rule.${words}`, {
      code: tool.code,
      name: tool.name,
      projection: inWords(projectionMm, 'mm', 1),
      bevel: inWords(tool.bevelAngleDeg, 'deg', 1),
    })
  const ofSeveral = ({ irons, label, projectionMm }: LabelledMark) =>
    t('setUp:rule.several', {
      irons: label === '' ? irons.map(({ tool }) => tool.code).join(', ') : label,
      projection: inWords(projectionMm, 'mm', 1),
    })
  return { of, ofSeveral }
}

interface MarkOnRuleProps {
  readonly mark: LabelledMark
  /** Top of its label; null: it has none. */
  readonly topPx: number | null
  /** Where the rule begins. */
  readonly endPx: number
  /** The iron in hand stands here. */
  readonly strong: boolean
  /** The mark is pointed at, or reached by the keyboard. */
  onPoint(ironId: string): void
  /** The irons of a mark of several are wanted. */
  onOpen(): void
}

/** A mark of one iron is a link that takes it in hand; one of several leads to its irons below the rule. */
export const MarkOnRule = ({ mark, topPx, endPx, strong, onPoint, onOpen }: MarkOnRuleProps) => {
  const words = useWords()
  const [first, second] = mark.irons
  if (!first) return null
  const point = () => onPoint(first.tool.id)
  const top = topPx ?? endPx - BARE_PX
  const shared = {
    className: 'rule-mark',
    'data-strong': strong,
    style: { left: Math.round(mark.xPx) - HALF_PX, width: 2 * HALF_PX, top, height: endPx - top },
    onPointerEnter: point,
    onFocus: point,
  }
  const label: ReactNode = topPx !== null && <span className="rule-label">{mark.label}</span>
  if (!second)
    return (
      <a {...shared} href={hashFor('setUp', first.tool.code)} aria-label={words.of(first)}>
        {label}
      </a>
    )
  return (
    <button {...shared} type="button" aria-label={words.ofSeveral(mark)} onClick={onOpen}>
      {label}
    </button>
  )
}

interface NamedIronsProps {
  readonly irons: readonly StandingIron[]
  readonly list: RefObject<HTMLUListElement | null>
}

/** Name and figure of every iron at the mark that was last pointed at or focused; of several, each can be taken in hand here. */
export const NamedIrons = ({ irons, list }: NamedIronsProps) => {
  const words = useWords()
  const [first, second] = irons
  return (
    <ul className="rule-named" ref={list}>
      {first && !second && <li>{words.of(first)}</li>}
      {second &&
        irons.map((iron) => (
          <li key={iron.tool.id}>
            <a href={hashFor('setUp', iron.tool.code)}>{words.of(iron, 'listed')}</a>
          </li>
        ))}
    </ul>
  )
}
