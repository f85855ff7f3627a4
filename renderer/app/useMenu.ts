import { useEffect } from 'react'
import { act } from './actions.ts'
import { transport } from './transport.ts'

/** Does what the native menu asks for; a sheet laid over the window is answered first, as with the keys. */
export const useMenu = (): void =>
  useEffect(
    () =>
      transport.onEvent((event) => {
        if (event.type === 'act' && !document.querySelector('dialog:modal')) act(event.action)
      }),
    [],
  )
