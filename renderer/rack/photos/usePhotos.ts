import type { Photo } from '../../../main/contract/extras.ts'
import { useApp } from '../../app/store.ts'
import { useAnswer } from '../../app/useAnswer.ts'

/** @returns the pictures of a tool, newest first */
export const usePhotos = (toolId: string): readonly Photo[] => {
  const changes = useApp((app) => app.photoChanges)
  return useAnswer('photo.list', { toolId }, [changes]) ?? []
}
