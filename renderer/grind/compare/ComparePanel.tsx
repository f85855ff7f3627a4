import { SelectEntry } from '../../ui/Entry.tsx'
import { Options } from '../../ui/Options.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { useTexts } from '../../ui/texts.tsx'
import type { PanelProps } from '../GrindBar.tsx'
import { Beside } from './Beside.tsx'
import { choose, keepThis, putAway, useComparing } from './comparing.ts'
import { Differences } from './Differences.tsx'
import { useOffers, useOtherName } from './useNames.ts'
import './compare.css'

/** What the job on the model is compared with, and how both stand. */
export const ComparePanel = ({ running, moment, lifted }: PanelProps) => {
  const { choice, beside, other, problems, kept } = useComparing()
  const t = useTexts()
  const name = useOtherName()
  const waiting = choice !== 'none' && !other && problems.length === 0
  return (
    <div className={beside && other ? 'compare compare-wide' : 'compare'}>
      <div className="compare-choice">
        <SelectEntry name={t('compare:with')} value={choice} options={useOffers()} onChange={choose} />
        <button type="button" className="key" onClick={() => keepThis(running, moment)}>
          {t('compare:keep')}
        </button>
        {choice !== 'none' && (
          <button type="button" className="key" onClick={putAway}>
            {t('compare:putAway')}
          </button>
        )}
      </div>
      <div className="compare-ways">
        {other && <WayChoice beside={beside} />}
        <p role="status">
          {kept && t(kept.byHand ? 'compare:keptByHand' : 'compare:kept', { iron: kept.iron, sweep: kept.sweep })}
        </p>
      </div>
      <Problems problems={problems} of={name} />
      {waiting && <p role="status">{t('compare:starting')}</p>}
      {other && (
        <>
          {beside && <Beside own={running} other={other} lifted={lifted} />}
          <Differences own={running} other={other} />
        </>
      )}
    </div>
  )
}

const ways = ['overlaid', 'beside'] as const

const WayChoice = ({ beside }: { readonly beside: boolean }) => {
  const t = useTexts()
  return (
    <Options
      legend={t('compare:way.legend')}
      hideLegend
      options={ways.map((value) => ({ value, name: t(`compare:way.${value}`) }))}
      value={beside ? 'beside' : 'overlaid'}
      onChoose={(way) => useComparing.setState({ beside: way === 'beside' })}
    />
  )
}
