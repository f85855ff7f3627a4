import { placeInWords } from '../../../main/contract/inOutWords.ts'
import { problemSentence, useTexts } from '../../ui/texts.tsx'
import type { Look } from './useBringIn.ts'

/** Faults written out; whoever has more has one reason for most of them. */
const FAULTS_SHOWN = 20

/** What is wrong in a file, row by row in words. */
export const Faults = ({ look }: { readonly look: Look }) => {
  const t = useTexts()
  const { faults, faultCount, counts } = look
  if (faultCount === 0) return null
  const more = faultCount - Math.min(faults.length, FAULTS_SHOWN)
  return (
    <div>
      <h4>{t('inOut:in.faults')}</h4>
      <ul className="in-out-faults">
        {faults.slice(0, FAULTS_SHOWN).map((fault) => (
          <li key={`${fault.noun} ${fault.row} ${fault.column} ${fault.code}`}>
            <strong>{placeInWords(t, fault, counts.length > 1)}</strong>
            {problemSentence(t, { code: fault.code, path: '', params: fault.params })}
          </li>
        ))}
      </ul>
      {more > 0 && <p className="muted">{t('inOut:in.more', { count: more })}</p>}
    </div>
  )
}
