import { useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import { acceptOf } from '../../../main/contract/fileKinds.ts'
import { handOverBytes } from '../../app/handOver.ts'
import { useApp } from '../../app/store.ts'
import { FileKey } from '../../ui/FileKey.tsx'
import { problemSentence, useTexts } from '../../ui/texts.tsx'
import type { PanelProps } from '../GrindBar.tsx'
import { jobFileName, jobFileText, readJobFile, takenOver } from './jobFile.ts'
import './jobFile.css'

/** A file that could not be opened, and why. */
interface Refused {
  readonly file: string
  readonly problems: readonly Problem[]
}

/** Reasons told; a file that is altogether something else has hundreds. */
const MOST_TOLD = 6

/** The job as a file: kept, opened on the model, taken over. */
export const JobFilePanel = ({ running }: PanelProps) => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const trial = useApp((app) => (app.trial?.of === 'file' ? app.trial : null))
  const [refused, setRefused] = useState<Refused | null>(null)
  if (!tool) return null
  const save = (): void => {
    handOverBytes(jobFileText(running.job), 'application/json', jobFileName(tool.code, tool.name), 'jobFile:saved')
  }
  const open = async (picked: File | undefined): Promise<void> => {
    if (!picked) return
    const job = readJobFile(await picked.text())
    setRefused(job.ok ? null : { file: picked.name, problems: job.problems })
    if (job.ok) useApp.setState({ trial: { of: 'file', job: job.value, name: picked.name } })
  }
  return (
    <div className="job-file">
      <p>{t('jobFile:how')}</p>
      <div className="job-file-keys">
        <button type="button" className="key" onClick={save}>
          {t('jobFile:save')}
        </button>
        <FileKey name={t('jobFile:open')} accept={`${acceptOf('job')},.json`} onPick={open} />
      </div>
      {refused && <WhyNot {...refused} />}
      {trial && <Shown file={trial.name} code={tool.code} />}
    </div>
  )
}

const WhyNot = ({ file, problems }: Refused) => {
  const t = useTexts()
  return (
    <div role="alert">
      <p>{t('jobFile:cannot', { file })}</p>
      <ul className="job-file-why">
        {problems.slice(0, MOST_TOLD).map((found) => (
          <li key={`${found.path} ${found.code}`}>
            {found.path !== '' && <code>{found.path}</code>} {problemSentence(t, found)}
          </li>
        ))}
        {problems.length > MOST_TOLD && <li>{t('jobFile:more', { count: problems.length - MOST_TOLD })}</li>}
      </ul>
    </div>
  )
}

/** The file's job stands on the model: take it over, or leave it. */
const Shown = ({ file, code }: { readonly file: string; readonly code: string }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  const takeOver = async (): Promise<void> => {
    const { trial } = useApp.getState()
    if (!trial || !(await editJob((own) => takenOver(own, trial.job)))) return
    useApp.setState({ trial: null })
  }
  return (
    <div className="job-file-keys" role="status">
      <p>{t('jobFile:shown', { file, code })}</p>
      <button type="button" className="key" onClick={() => void takeOver()}>
        {t('jobFile:takeOver', { code })}
      </button>
    </div>
  )
}
