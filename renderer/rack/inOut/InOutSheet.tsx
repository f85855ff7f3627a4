import { useEffect, useRef, useState } from 'react'
import type { CallOutput } from '../../../main/contract/calls.ts'
import { loadAll } from '../../app/readRack.ts'
import { say } from '../../app/store.ts'
import { Sheet } from '../../ui/Sheet.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { BringIn } from './BringIn.tsx'
import './inOut.css'
import { allInWords } from '../../../main/contract/inOutWords.ts'
import { TakeOut } from './TakeOut.tsx'
import { useBringIn } from './useBringIn.ts'

interface InOutSheetProps {
  /** A file that was dropped on the rack and opened the sheet; null: none. */
  readonly dropped: File | null
  readonly onClose: () => void
}

/** The rack as a file: taken out, and brought in. A file may be dropped anywhere on the sheet. */
export const InOutSheet = ({ dropped, onClose }: InOutSheetProps) => {
  const t = useTexts()
  const [over, setOver] = useState(false)
  const finish = (name: string, { counts, changeId }: CallOutput<'inOut.bring'>): void => {
    say('inOut:in.done', { file: name, what: allInWords(t, counts) }, changeId === 0 ? null : changeId)
    void loadAll()
    onClose()
  }
  const incoming = useBringIn(finish)
  const { choose } = incoming
  const taken = useRef<File | null>(null)
  useEffect(() => {
    if (dropped === null || taken.current === dropped) return
    taken.current = dropped
    void choose(dropped)
  }, [dropped, choose])
  return (
    <Sheet title={t('inOut:title')} onClose={onClose}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shorter way to what the key beside does */}
      <div
        className="in-out"
        data-over={over}
        onDragOver={(event) => {
          event.preventDefault()
          setOver(true)
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault()
          setOver(false)
          void incoming.choose(event.dataTransfer.files[0])
        }}
      >
        {incoming.name === null && <TakeOut />}
        <BringIn incoming={incoming} />
      </div>
    </Sheet>
  )
}
