import { type Steel, softening, temperColours, temperRanges } from '../../geometry/heat.ts'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { SelectEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { changeHoning, useHoning } from './setting.ts'
import { steelNamed, steels } from './steels.ts'

interface HeatProps {
  readonly tool: Tool
  readonly report: Report
}

/** Heat on the wheel: temper colours, what they mean for this steel, and the rim's speed against the wheel's mark. */
export const Heat = ({ tool, report }: HeatProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const station = useApp((app) => app.station)
  const chosen = useHoning(tool.id).steel
  const named = steelNamed(tool.steel)
  const steel = chosen === 'unknown' ? null : (chosen ?? named)
  const dry = station?.cooling === 'dry'
  return (
    <section className="honing-heat" aria-label={t('honing:heat.heading')}>
      <h2>{t('honing:heat.heading')}</h2>
      <p className={dry ? 'caution' : 'muted'}>{t(dry ? 'honing:heat.dry' : 'honing:heat.wet')}</p>
      <SelectEntry
        name={t('honing:heat.steel')}
        value={steel ?? 'unknown'}
        options={[
          { value: 'unknown' as const, name: t('honing:heat.unknown') },
          ...steels.map((value) => ({ value, name: t(`honing:steel.${value}`) })),
        ]}
        onChange={(value) => changeHoning(tool.id, { steel: value })}
      />
      {chosen === null && tool.steel.trim() !== '' && (
        <p className="muted">{t(named ? 'honing:heat.read' : 'honing:heat.notRead', { words: tool.steel })}</p>
      )}
      {steel && <p>{t('honing:heat.range', { least: temperRanges[steel][0], most: temperRanges[steel][1] })}</p>}
      <Colours steel={steel} />
      <p className="muted">{t('honing:heat.source')}</p>
      <p>
        {t('honing:heat.speed', {
          speed: inWords(report.setUp.rimSpeedMPerS, 'mPerS', 1),
          most: inWords(report.job.station.maxRimSpeedMPerS, 'mPerS', 0),
        })}
      </p>
      <p className="caution">{t('honing:heat.care')}</p>
    </section>
  )
}

const Colours = ({ steel }: { readonly steel: Steel | null }) => {
  const t = useTexts()
  return (
    <ul className="temper">
      {temperColours.map(({ code, celsius }) => (
        <li key={code}>
          <span className={`temper-swatch temper-${code}`} aria-hidden="true" />
          <span>{t(`honing:colour.${code}`)}</span>
          <span className="muted">{t('honing:heat.celsius', { celsius: Math.round(celsius) })}</span>
          <span>{steel ? t(`honing:softening.${softening(steel, celsius)}`) : ''}</span>
        </li>
      ))}
    </ul>
  )
}
