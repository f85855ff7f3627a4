import { parseJobText } from '../../../geometry/parseJob.ts'
import { problem } from '../../../geometry/result.ts'
import { type FileKind, fileKindNames, fileKinds, kindOfFile } from '../../../main/contract/fileKinds.ts'
import { closing } from '../jobParts.ts'
import { go } from '../route.ts'
import { say, useApp } from '../store.ts'
import { openJob, takeTool } from '../storeJob.ts'
import { call } from '../transport.ts'
import { refuseFile, useIncoming } from './incoming.ts'

/** Shows a job on the model, beside the tool in hand or, with none, beside the first of the rack. */
const openJobFile = async (file: File): Promise<void> => {
  const job = closing(parseJobText(await file.text()))
  if (!job.ok) return refuseFile(file.name, job.problems)
  const { tool, tools } = useApp.getState()
  const [first] = tools
  if (!tool && !first) return refuseFile(file.name, [problem('fileNeedsTool')])
  if (!tool && first) takeTool(first)
  // Its own job is opened before, or it would take the place of the one that is shown.
  await openJob()
  useApp.setState({ trial: { of: 'file', job: job.value, name: file.name } })
  go('grind', useApp.getState().tool?.code ?? null)
}

/** The rack's own sheet looks at it first; nothing is written unasked. */
const openRackFile = async (file: File): Promise<void> => {
  useIncoming.setState({ rack: file })
  go('rack', useApp.getState().tool?.code ?? null)
}

/** A lesson joins the workshop's own, with its undo; one that is there already is refused. */
const openLessonFile = async (file: File): Promise<void> => {
  const added = await call('lesson.add', { text: await file.text() })
  if (!added.ok) return refuseFile(file.name, added.problems)
  say('common:message.lesson.add', { label: added.value.value.title }, added.value.changeId)
  go('teach', useApp.getState().tool?.code ?? null)
}

/** What is done with each kind of file. */
const openers: Readonly<Record<FileKind, (file: File) => Promise<void>>> = {
  job: openJobFile,
  lesson: openLessonFile,
  rack: openRackFile,
}

/** Opens a file by what its name says it is, or says why it cannot be opened. */
export const openFile = async (file: File): Promise<void> => {
  const kind = kindOfFile(file.name)
  if (kind !== null) return openers[kind](file)
  const endings = fileKindNames.map((each) => `.${fileKinds[each].ending}`).join(', ')
  refuseFile(file.name, [problem('fileKindUnknown', '', { endings })])
}
