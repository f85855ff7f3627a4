import { type ReactNode, useEffect, useState } from 'react'

/** What takes its time to come: a task of its own, after what is round it stands. */
export const Later = ({ children }: { readonly children: ReactNode }) => {
  const [due, setDue] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setDue(true))
    return () => clearTimeout(timer)
  }, [])
  return due && children
}
