import type { useTask } from '../../app/useTask.ts'
import { useTexts } from '../../ui/texts.tsx'

interface WorkingProps {
  readonly task: ReturnType<typeof useTask>
  /** What is being done, in a sentence. */
  readonly says: string
}

/** What is being done to many tools, how far it is, and the key that stops it; nothing where nothing is being done. */
export const Working = ({ task, says }: WorkingProps) => {
  const t = useTexts()
  if (task.done === null) return null
  return (
    <span className="many-working">
      <span role="status">{says}</span>
      {/* Beside what is read out: that would otherwise be said at every step. */}
      <span className="figure">{t('many:percent', { percent: Math.round(task.done * 100) })}</span>
      <button type="button" className="word" onClick={task.stop}>
        {t('many:stop')}
      </button>
    </span>
  )
}
