import { useState } from 'react'
import { acceptOf } from '../../../main/contract/fileKinds.ts'
import { countsInWords, wouldWrite } from '../../../main/contract/inOutWords.ts'
import { FileKey } from '../../ui/FileKey.tsx'
import { Problems } from '../../ui/Problems.tsx'
import { Tick } from '../../ui/Tick.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { Faults } from './Faults.tsx'
import { TableAs } from './TableAs.tsx'
import type { Look, useBringIn } from './useBringIn.ts'

/** Kinds of file, as the window's own list of files has them. */
const ACCEPT = `${acceptOf('rack')},.txt,text/csv,application/json,application/zip`

interface BringInProps {
  readonly incoming: ReturnType<typeof useBringIn>
}

/** A file is chosen or dropped, looked at, and brought in. */
export const BringIn = ({ incoming }: BringInProps) => {
  const t = useTexts()
  const { name, look, busy, problems } = incoming
  return (
    <section className="in-out-part" aria-label={t('inOut:in.heading')}>
      <h3>{t('inOut:in.heading')}</h3>
      {name === null && <p>{t('inOut:in.how')}</p>}
      <div className="in-out-row">
        <FileKey
          name={t(name === null ? 'inOut:in.choose' : 'inOut:in.another')}
          accept={ACCEPT}
          onPick={incoming.choose}
        />
        <span className="muted">{t('inOut:in.drop')}</span>
      </div>
      <div className="in-out-row" role="status">
        {busy && name && (
          <>
            <span>{t(`inOut:in.${busy.does}`, { file: name, percent: Math.round(busy.done * 100) })}</span>
            <button type="button" className="word" onClick={incoming.stop}>
              {t('inOut:in.stop')}
            </button>
          </>
        )}
      </div>
      {name !== null && look === null && problems.length > 0 && <p>{t('inOut:in.refused', { file: name })}</p>}
      <Problems problems={problems} />
      {look && <Looked key={name} look={look} incoming={incoming} />}
    </section>
  )
}

/** What the file would do, how its table is read, what is wrong in it, and the key that brings it in. */
const Looked = ({ look, incoming }: BringInProps & { readonly look: Look }) => {
  const t = useTexts()
  const [leaveOut, setLeaveOut] = useState(false)
  const { counts, faultCount } = look
  const writes = wouldWrite(counts)
  const mayBring = writes && (faultCount === 0 || leaveOut) && incoming.busy === null
  return (
    <div className="in-out-looked">
      {look.table && <TableAs look={look} table={look.table} onReadAs={(manner) => void incoming.readAs(manner)} />}
      <h4>{t('inOut:in.counts')}</h4>
      <ul className="in-out-counts">
        {counts.map((each) => (
          <li key={each.noun}>
            <strong>{t(`inOut:many.${each.noun}`)}</strong> {countsInWords(t, each)}
          </li>
        ))}
      </ul>
      <Faults look={look} />
      {faultCount > 0 && <Tick name={t('inOut:in.leaveOut')} checked={leaveOut} onTick={setLeaveOut} />}
      <div className="in-out-row">
        <button
          type="button"
          className="key key-main"
          disabled={!mayBring}
          onClick={() => void incoming.bring(leaveOut)}
        >
          {t('inOut:in.bring')}
        </button>
        <span className="muted">{t(writes || faultCount > 0 ? 'inOut:in.copy' : 'inOut:in.nothingToDo')}</span>
      </div>
    </div>
  )
}
