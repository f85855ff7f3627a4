import { type ComponentType, lazy, Suspense } from 'react'

/** A sheet that is read when it is first opened, so that the rack's first picture does not wait for it. */
const later = <P extends object>(read: () => Promise<ComponentType<P>>): ComponentType<P> => {
  const Read = lazy(async () => ({ default: await read() })) as unknown as ComponentType<P>
  return (props) => (
    <Suspense fallback={null}>
      <Read {...props} />
    </Suspense>
  )
}

/** The sheets of the rack. */
export const CopiesSheet = later(async () => (await import('./copies/CopiesSheet.tsx')).CopiesSheet)
export const DressingsSheet = later(async () => (await import('./dressing/DressingsSheet.tsx')).DressingsSheet)
export const HistorySheet = later(async () => (await import('./history/HistorySheet.tsx')).HistorySheet)
export const InOutSheet = later(async () => (await import('./inOut/InOutSheet.tsx')).InOutSheet)
export const ToolSheet = later(async () => (await import('./toolSheet/ToolSheet.tsx')).ToolSheet)
export const LendSheet = later(async () => (await import('./lending/LendSheet.tsx')).LendSheet)
export const ManySheet = later(async () => (await import('./choosing/ManySheet.tsx')).ManySheet)
export const OwnFieldSheet = later(async () => (await import('./belonging/OwnFieldSheet.tsx')).OwnFieldSheet)
export const PersonSheet = later(async () => (await import('./belonging/PersonSheet.tsx')).PersonSheet)
export const PlaceSheet = later(async () => (await import('./belonging/PlaceSheet.tsx')).PlaceSheet)
export const PurposeSheet = later(async () => (await import('./belonging/PurposeSheet.tsx')).PurposeSheet)
export const PhotoSheet = later(async () => (await import('./photos/PhotoSheet.tsx')).PhotoSheet)
export const LabelsSheet = later(async () => (await import('./labels/LabelsSheet.tsx')).LabelsSheet)
export const ScanSheet = later(async () => (await import('../scan/ScanSheet.tsx')).ScanSheet)
export const ServingSheet = later(async () => (await import('./serving/ServingSheet.tsx')).ServingSheet)
