import { type FormEvent, useEffect, useRef, useState } from 'react'
import { failed, type Problem, problem, type Result } from '../../geometry/result.ts'
import { readMark } from '../../main/contract/codes.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import { TextEntry } from '../ui/Entry.tsx'
import { Problems } from '../ui/Problems.tsx'
import { useTexts } from '../ui/texts.tsx'
import { CameraPart } from './CameraPart.tsx'
import { findCode } from './findCode.ts'
import { useMarks } from './marks.ts'
import './scan.css'

/** The same label that stays before the camera is read again and again; away for so long (ms), it is a new scan. */
const AWAY_MS = 2_000

interface CodeEntryProps {
  readonly name: string
  readonly action: string
  /** Whether what was given in can be taken; why not is shown. */
  readonly onFound: (found: FoundByCode) => Promise<Result<unknown>> | Result<unknown>
  readonly camera?: boolean
}

/** Codes one after another, typed, by a reader at the keyboard or before the camera; each is looked up and handed on in turn. */
export const CodeEntry = ({ name, action, onFound, camera = false }: CodeEntryProps) => {
  const t = useTexts()
  const [typed, setTyped] = useState('')
  const { problems, take } = useTaking(onFound)
  const form = useRef<HTMLFormElement>(null)
  useMarks((read) => void take(read.code))
  const send = async (event: FormEvent) => {
    event.preventDefault()
    if (typed.trim() === '') return
    if (await take(typed)) setTyped('')
    form.current?.querySelector('input')?.focus()
  }
  return (
    <div className="scan">
      <form ref={form} className="scan-typed" onSubmit={(event) => void send(event)}>
        <TextEntry name={name} value={typed} onChange={setTyped} />
        <button type="submit" className="key">
          {action}
        </button>
      </form>
      <Problems problems={problems} />
      {camera && (
        <details>
          <summary>{t('scan:camera.start')}</summary>
          <CameraTaking onRead={take} />
        </details>
      )}
    </div>
  )
}

const CameraTaking = ({ onRead }: { readonly onRead: (text: string) => Promise<boolean> }) => {
  const last = useRef({ text: '', atMs: 0 })
  const read = (text: string) => {
    const nowMs = performance.now()
    const still = text === last.current.text && nowMs - last.current.atMs < AWAY_MS
    last.current = { text, atMs: nowMs }
    if (!still) void onRead(text)
  }
  return <CameraPart onRead={read} />
}

/** Looks codes up one after the other, in the order in which they came. */
const useTaking = (onFound: CodeEntryProps['onFound']) => {
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const latest = useRef(onFound)
  useEffect(() => {
    latest.current = onFound
  })
  const queue = useRef<Promise<unknown>>(Promise.resolve())
  const one = async (text: string): Promise<boolean> => {
    const strange = text.length > 0 && text.includes(':') && readMark(text) === null
    const found = strange ? failed(problem('codeNotOurs', '', { text: text.slice(0, 60) })) : await findCode(text)
    const taken = found.ok ? await latest.current(found.value) : found
    setProblems(taken.ok ? [] : taken.problems)
    return taken.ok
  }
  const take = (text: string): Promise<boolean> => {
    const mine = queue.current.then(() => one(text))
    queue.current = mine
    return mine
  }
  return { problems, take }
}
