import { useEffect, useRef } from 'react'

/** Actions by the names that shortcuts.ts gives them. */
export type Actions = Readonly<Record<string, () => void>>

/** What can be done now: the newest that offers an action is asked. */
const offered: { current: Actions }[] = []

/** Offers actions to the keyboard for as long as the component is there. */
export const useActions = (actions: Actions): void => {
  const latest = useRef(actions)
  latest.current = actions
  useEffect(() => {
    offered.push(latest)
    return () => void offered.splice(offered.indexOf(latest), 1)
  }, [])
}

const find = (action: string): (() => void) | undefined =>
  offered.findLast(({ current }) => action in current)?.current[action]

/** Whether somebody can do this now. */
export const canAct = (action: string): boolean => find(action) !== undefined

/** Does it, where it can be done. */
export const act = (action: string): void => find(action)?.()
