import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import type { EntriesProps } from './Entries.tsx'
import { takeAgain } from './lastTime.ts'
import { Touch } from './Touch.tsx'
import { useLineWords } from './words.ts'

/** The key that fills in the newest reading taken in this way, with what that one showed; nothing where there is none. */
export const LastTime = ({ tool, newest }: Pick<EntriesProps, 'tool' | 'newest'>) => {
  const t = useTexts()
  const showed = useLineWords()
  if (!newest) return null
  const date = shortDate(newest.at)
  const by = t(`measure:log.by.${newest.method}`, { points: newest.points?.length })
  return (
    <div className="entries-touch">
      <Touch
        name={t('measure:entries.asLastTime')}
        words={[date, by, showed(newest, tool)].filter(Boolean).join(', ')}
        onTouch={() => takeAgain(newest, t('measure:profile.lastTime', { date }))}
      />
    </div>
  )
}
