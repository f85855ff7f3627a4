import { useEffect, useState } from 'react'
import { readTypedOrMark } from '../../main/contract/codes.ts'
import { useIncoming } from '../app/opening/incoming.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { openWorkshop } from '../app/storeRack.ts'
import { ProblemHelp } from '../help/ProblemHelp.tsx'
import { openCode } from '../scan/openCode.ts'
import { TourOffer } from '../tour/TourOffer.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { findTyped, useFinding } from './finding.ts'
import { openLabels } from './labels/useLabels.ts'
import { CopiesSheet, HistorySheet, InOutSheet, ScanSheet } from './sheets.tsx'

interface RackHeadProps {
  readonly onAdd: () => void
}

/** How things stand in one sentence, and the way to one tool. */
export const RackHead = ({ onAdd }: RackHeadProps) => {
  const t = useTexts()
  const typed = useFinding(({ typed }) => typed)
  const [scan, setScan] = useState(false)
  return (
    <div className="rack-head">
      <Notices />
      <TourOffer />
      <Standing />
      <div className="rack-find">
        <label className="unseen" htmlFor="find">
          {t('rack:find')}
        </label>
        <input
          id="find"
          type="search"
          placeholder={t('rack:find')}
          value={typed}
          onChange={(event) => findTyped(event.target.value)}
          onKeyDown={(event) => event.key === 'Enter' && void openTyped(typed)}
        />
        <button type="button" className="key" onClick={onAdd}>
          {t('rack:add')}
        </button>
        <button type="button" className="key" onClick={() => setScan(true)}>
          {t('scan:open')}
        </button>
      </div>
      {scan && <ScanSheet onClose={() => setScan(false)} />}
    </div>
  )
}

/** Opens what a code stands for; words that are no code go on finding. */
const openTyped = async (typed: string): Promise<void> => {
  if (readTypedOrMark(typed) === null) return
  const opened = await openCode(typed)
  if (!opened.ok) return opened.problems[0] && sayProblem(opened.problems[0])
  // A place has put its own words there.
  if (useFinding.getState().typed === typed) findTyped('')
}

/** What happened to the data since last time: a damaged file put aside, a copy that could not be written. */
const Notices = () => {
  const t = useTexts()
  const notices = useApp((app) => app.workshop?.notices ?? null)
  const [copies, setCopies] = useState(false)
  return (
    <>
      {notices?.map((notice) => (
        <p key={notice.code} className="caution rack-notice">
          {problemSentence(t, notice)} <ProblemHelp code={notice.code} />{' '}
          {notice.code === 'rackMovedAside' && (
            <button type="button" className="word" onClick={() => setCopies(true)}>
              {t('copies:offer')}
            </button>
          )}
        </p>
      ))}
      {copies && <CopiesSheet onClose={() => setCopies(false)} />}
    </>
  )
}

const open = async (rack: 'demo' | 'own'): Promise<void> => {
  const opened = await openWorkshop(rack)
  if (!opened.ok && opened.problems[0]) sayProblem(opened.problems[0])
}

const Standing = () => {
  const t = useTexts()
  const [copies, setCopies] = useState(false)
  const [history, setHistory] = useState(false)
  const { tools, curved, lent, due } = useApp((app) => app.standing)
  const [inOut, setInOut] = useState<'open' | File | null>(null)
  const incoming = useIncoming(({ rack }) => rack)
  useEffect(() => {
    if (incoming === null) return
    setInOut(incoming)
    useIncoming.setState({ rack: null })
  }, [incoming])
  const workshop = useApp((app) => app.workshop)
  const demo = workshop?.rack !== 'own'
  return (
    <div className="rack-standing">
      <p className="sentence">
        {t('rack:standing.tools', { count: tools })} {tools > 0 && t('rack:standing.curved', { count: curved })}{' '}
        {due > 0 && t('rack:standing.due', { count: due })} {lent > 0 && t('rack:standing.lent', { count: lent })}
      </p>
      <p className="rack-demo">
        <span className="muted">{t(demo ? 'rack:demo' : 'rack:own')}</span>
        <button type="button" className="word rack-own" onClick={() => void open(demo ? 'own' : 'demo')}>
          {t(demo ? 'rack:startOwn' : 'rack:openDemo')}
        </button>
        <button type="button" className="word" onClick={() => setCopies(true)}>
          {t('copies:open')}
        </button>
        <button type="button" className="word" onClick={() => setInOut('open')}>
          {t('inOut:open')}
        </button>
        <button type="button" className="word" onClick={() => setHistory(true)}>
          {t('history:open')}
        </button>
        <button type="button" className="word" onClick={() => openLabels([])}>
          {t('labels:open')}
        </button>
      </p>
      {inOut && <InOutSheet dropped={inOut === 'open' ? null : inOut} onClose={() => setInOut(null)} />}
      {history && <HistorySheet of={null} onClose={() => setHistory(false)} />}
      {copies && <CopiesSheet onClose={() => setCopies(false)} />}
    </div>
  )
}
