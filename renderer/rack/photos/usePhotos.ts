import { useEffect, useState } from 'react'
import type { Photo } from '../../../main/contract/extras.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'

/** @returns the pictures of a tool, newest first, read again when some were changed */
export const usePhotos = (toolId: string): readonly Photo[] => {
  const changes = useApp((app) => app.photoChanges)
  const [photos, setPhotos] = useState<readonly Photo[]>([])
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the trigger
  useEffect(() => {
    let wanted = true
    void call('photo.list', { toolId }).then((listed) => {
      if (wanted && listed.ok) setPhotos(listed.value)
    })
    return () => {
      wanted = false
    }
  }, [toolId, changes])
  return photos
}
