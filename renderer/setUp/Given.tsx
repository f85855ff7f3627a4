import { useProblemAt } from '../app/JobField.tsx'
import { useApp } from '../app/store.ts'
import { moveJob } from '../app/storeJob.ts'
import { SelectEntry } from '../ui/Entry.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { aimKeys, foundKeyOf, withFound } from './found.ts'
import type { Standing } from './SetUpScreen.tsx'

/** Which of the three figures is found from the others. */
export const Given = ({ standing }: { readonly standing: Standing | null }) => {
  const t = useTexts()
  return (
    <div className="given">
      <h2>{t('setUp:given.heading')}</h2>
      <p className="muted">{t('setUp:given.how')}</p>
      {standing && <FoundChoice standing={standing} />}
    </div>
  )
}

const FoundChoice = ({ standing: { job, figures } }: { readonly standing: Standing }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  return (
    <Options
      legend={t('setUp:given.found')}
      options={aimKeys.map((value) => ({ value, name: t(`setUp:given.${value}`) }))}
      value={foundKeyOf(job)}
      onChoose={(found) => editJob((now) => withFound(now, figures, found))}
    />
  )
}

/** Where and with what the grinding is done. */
export const Places = () => {
  const t = useTexts()
  const { stations, fixtures, job } = useApp()
  const stationProblem = useProblemAt('station')
  const fixtureProblem = useProblemAt('fixture')
  if (!job) return null
  const named = ({ id, code, name }: { id: string; code: string; name: string }) => ({
    value: id,
    name: `${code} ${name}`,
  })
  return (
    <div className="given-places">
      <SelectEntry
        name={t('setUp:given.station')}
        value={job.stationId}
        options={stations.map(named)}
        problem={stationProblem}
        onChange={(stationId) => void moveJob({ stationId })}
      />
      <SelectEntry
        name={t('setUp:given.fixture')}
        value={job.fixtureId}
        options={fixtures.map(named)}
        problem={fixtureProblem}
        onChange={(fixtureId) => void moveJob({ fixtureId })}
      />
    </div>
  )
}
