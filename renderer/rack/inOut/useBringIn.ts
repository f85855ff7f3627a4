import { useState } from 'react'
import type { Problem, Result } from '../../../geometry/result.ts'
import type { CallInput, CallOutput } from '../../../main/contract/calls.ts'
import { transport } from '../../app/transport.ts'
import { useTask } from '../../app/useTask.ts'

export type Look = CallOutput<'inOut.look'>
type Offer = CallInput<'inOut.look'>
/** How a table is to be read, where the user says so. */
export type Manner = Pick<Offer, 'noun' | 'delimiter' | 'columns'>

/** A file on its way in. */
interface Coming {
  readonly name: string
  readonly offer: Offer
}

type Does = 'looking' | 'writing'

/** The way of a file into the rack: handed in, looked at as often as the user reads it another way, then brought in. */
export const useBringIn = (onBrought: (name: string, brought: CallOutput<'inOut.bring'>) => void) => {
  const [coming, setComing] = useState<Coming | null>(null)
  const [look, setLook] = useState<Look | null>(null)
  const [does, setDoes] = useState<Does>('looking')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const task = useTask()

  const run = async <T>(next: Does, work: (id: string) => Promise<Result<T>>): Promise<T | null> => {
    setDoes(next)
    setProblems([])
    const answer = await task.run(work)
    if (answer.ok) return answer.value
    setProblems(answer.problems)
    return null
  }

  const lookAt = async (next: Coming): Promise<void> => {
    setComing(next)
    const seen = await run('looking', (id) => transport.call('inOut.look', next.offer, id))
    if (seen) setLook(seen)
  }

  const choose = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setLook(null)
    setComing({ name: file.name, offer: { blobId: '' } })
    const taken = await run('looking', () => transport.put(file))
    if (taken) await lookAt({ name: file.name, offer: { blobId: taken.blobId, fileName: file.name } })
  }

  const readAs = async (manner: Manner): Promise<void> => {
    if (coming) await lookAt({ ...coming, offer: { ...coming.offer, ...manner } })
  }

  const bring = async (leaveOut: boolean): Promise<void> => {
    if (!coming) return
    const { name, offer } = coming
    const brought = await run('writing', (id) => transport.call('inOut.bring', { ...offer, leaveOut }, id))
    if (brought) onBrought(name, brought)
  }

  return {
    name: coming?.name ?? null,
    look,
    /** What is being done, and how far it is, from 0 to 1. */
    busy: task.done === null ? null : { does, done: task.done },
    problems,
    choose,
    readAs,
    bring,
    stop: task.stop,
  }
}
