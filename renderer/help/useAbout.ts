import { useEffect, useState } from 'react'
import type { CallOutput } from '../../main/contract/calls.ts'
import { call } from '../app/transport.ts'

/** @returns what the host tells of the program and its files; null until it has */
export const useAbout = (): CallOutput<'workshop.about'> | null => {
  const [about, setAbout] = useState<CallOutput<'workshop.about'> | null>(null)
  useEffect(() => {
    void call('workshop.about', {}).then((told) => told.ok && setAbout(told.value))
  }, [])
  return about
}
