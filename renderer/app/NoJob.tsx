import { useTexts } from '../ui/texts.tsx'
import { ProblemNote } from './ProblemNote.tsx'
import { hashFor } from './route.ts'
import { useApp } from './store.ts'

/** What a screen of the job shows while there is none: the way to one, or that it is being opened. */
export const NoJob = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const troubled = useApp((app) => app.problems.length > 0)
  if (troubled) {
    return (
      <div className="page-note">
        <ProblemNote />
        <p>
          <a href={hashFor('rack', null)}>{t('common:noJob.toRack')}</a>
        </p>
      </div>
    )
  }
  if (tool) return <p className="page-note">{t('common:opening')}</p>
  return (
    <p className="page-note">
      {t('common:noJob.none')} <a href={hashFor('rack', null)}>{t('common:noJob.toRack')}</a>
    </p>
  )
}
