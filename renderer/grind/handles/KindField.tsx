import { useProblemAt } from '../../app/JobField.tsx'
import { forgetRefused } from '../../app/storeJob.ts'
import { FigureField } from '../../ui/FigureField.tsx'
import { useKeeping } from './keeping.ts'
import type { HandleKind } from './kind.ts'

interface KindFieldProps {
  readonly kind: HandleKind
  /** Told when a figure was taken. */
  readonly onDone?: () => void
}

/** What a handle sets, to be typed. */
export const KindField = ({ kind, onDone }: KindFieldProps) => {
  const keeping = useKeeping()
  return (
    <FigureField
      {...(kind.typed && { range: kind.typed })}
      quantity={kind.path}
      value={kind.value}
      label={kind.name}
      size="small"
      problem={useProblemAt(kind.path)}
      onRestore={forgetRefused}
      onCommit={async (value) => {
        const taken = value !== null && (await keeping.keep(kind, value))
        if (taken) onDone?.()
        return taken
      }}
    />
  )
}
