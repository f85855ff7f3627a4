import { useState } from 'react'
import type { Tool, ToolLine } from '../../../main/contract/entities.ts'
import { happeningKinds } from '../../../main/contract/work.ts'
import { sayProblem, useApp } from '../../app/store.ts'
import { enqueueTool } from '../../app/storeDay.ts'
import { useTexts } from '../../ui/texts.tsx'
import { giveBack, happened } from '../edits.ts'
import { LendSheet } from '../sheets.tsx'

/** @returns what the list says of a tool; null until it is read */
const useLine = (tool: Tool): ToolLine | null => {
  const held = useApp((app) => app.tool)
  const listed = useApp((app) => app.tools.find(({ id }) => id === tool.id) ?? null)
  return held && 'holder' in held && held.id === tool.id ? (held as ToolLine) : listed
}

/** What is noted at the bench in one touch, each with its undo in the message: honed, dropped, nicked, lent, back. */
export const QuickKeys = ({ tool }: { readonly tool: Tool }) => {
  const t = useTexts()
  const line = useLine(tool)
  const [lending, setLending] = useState(false)
  const back = async () => {
    const given = await giveBack(tool)
    if (!given.ok && given.problems[0]) sayProblem(given.problems[0])
  }
  const note = async (kind: (typeof happeningKinds)[number]) => {
    const noted = await happened(tool, kind)
    if (!noted.ok && noted.problems[0]) sayProblem(noted.problems[0])
  }
  const holder = line?.holder ?? ''
  return (
    <section className="quick-keys" aria-label={t('rack:quick.heading')}>
      <p className="detail-keys">
        {happeningKinds.map((kind) => (
          <button key={kind} type="button" className="word" onClick={() => void note(kind)}>
            {t(`rack:quick.${kind}`)}
          </button>
        ))}
        {holder === '' ? (
          <button type="button" className="word" onClick={() => setLending(true)}>
            {t('rack:quick.lend')}
          </button>
        ) : (
          <button type="button" className="word" onClick={() => void back()}>
            {t('rack:quick.back', { holder })}
          </button>
        )}
        <button type="button" className="word" onClick={() => void enqueueTool(tool)}>
          {t('rack:quick.queue')}
        </button>
      </p>
      {line && <Said line={line} />}
      {lending && (
        <LendSheet
          toolIds={[tool.id]}
          title={t('rack:lend.title', { code: tool.code, name: tool.name })}
          onClose={() => setLending(false)}
        />
      )}
    </section>
  )
}

/** Where it belongs, who has it, how often it was honed, and why it is due. */
const Said = ({ line }: { readonly line: ToolLine }) => {
  const t = useTexts()
  const { place, holder, honings, due } = line
  const said = [
    place !== '' && t('rack:said.place', { place }),
    holder !== '' && t('rack:said.holder', { holder }),
    honings > 0 && t('rack:said.honed', { count: honings }),
    due !== null && t(`rack:said.due.${due}`),
  ].filter((words) => words !== false)
  return said.length === 0 ? null : <p className="muted">{said.join(' ')}</p>
}
