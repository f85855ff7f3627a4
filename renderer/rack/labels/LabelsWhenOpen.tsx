import { LabelsSheet } from '../sheets.tsx'
import { useLabels } from './useLabels.ts'

/** The sheet that makes labels, while it is open. */
export const LabelsWhenOpen = () => {
  const items = useLabels((labels) => labels.items)
  return items && <LabelsSheet items={items} />
}
