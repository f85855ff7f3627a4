import type { Result } from '../../geometry/result.ts'
import { barMeasures, barPlaces, type StationDraft } from '../../main/contract/entities.ts'
import { useProblemAt } from '../app/JobField.tsx'
import { sayProblem, useApp } from '../app/store.ts'
import { moveJob } from '../app/storeJob.ts'
import { fixtureDraftOf, stationDraftOf } from '../rack/drafts.ts'
import { saveRecord } from '../rack/edits.ts'
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
      <Mounting />
    </div>
  )
}

/** How this station's bar and this fixture's seat are: kept with their records. */
const Mounting = () => {
  const t = useTexts()
  const { station, fixture } = useApp()
  if (!station || !fixture) return null
  const say = async (saved: Promise<Result<unknown>>) => {
    const result = await saved
    if (!result.ok && result.problems[0]) sayProblem(result.problems[0])
  }
  const keepStation = (patch: Partial<StationDraft>) => {
    const { id, version } = station
    void say(saveRecord('station', { id, version }, { ...stationDraftOf(station), ...patch }))
  }
  const keepFixture = (seatsOn: 'back' | 'bevelSide') => {
    const { id, version } = fixture
    void say(saveRecord('fixture', { id, version }, { ...fixtureDraftOf(fixture), seatsOn }))
  }
  return (
    <>
      <SelectEntry
        name={t('setUp:given.barMeasure')}
        value={station.barMeasure}
        options={barMeasures.map((value) => ({ value, name: t(`common:barMeasure.${value}`) }))}
        onChange={(barMeasure) => keepStation({ barMeasure })}
      />
      <SelectEntry
        name={t('setUp:given.barPlace')}
        value={station.barPlace}
        options={barPlaces.map((value) => ({ value, name: t(`common:barPlace.${value}`) }))}
        onChange={(barPlace) => keepStation({ barPlace })}
      />
      <SelectEntry
        name={t('setUp:given.rotation')}
        value={station.rotation}
        options={(['intoEdge', 'awayFromEdge'] as const).map((value) => ({
          value,
          name: t(`common:rotation.${value}`),
        }))}
        onChange={(rotation) => keepStation({ rotation })}
      />
      <SelectEntry
        name={t('setUp:given.seatsOn')}
        value={fixture.seatsOn}
        options={(['back', 'bevelSide'] as const).map((value) => ({ value, name: t(`common:seatsOn.${value}`) }))}
        onChange={keepFixture}
      />
    </>
  )
}
