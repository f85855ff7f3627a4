import { lazy, Suspense } from 'react'
import { useActions } from '../app/actions.ts'
import { useTexts } from '../ui/texts.tsx'
import { openHelp, useHelp } from './useHelp.ts'

const HelpSheet = lazy(async () => ({ default: (await import('./HelpSheet.tsx')).HelpSheet }))

/** The header's word for help, and help itself, read when it is first opened. */
export const HelpWord = () => {
  const t = useTexts()
  const at = useHelp((help) => help.at)
  useActions({ help: () => openHelp() })
  return (
    <>
      <button type="button" className="word" title={t('common:helpHint')} onClick={() => openHelp()}>
        {t('common:help')}
      </button>
      {at !== null && (
        <Suspense fallback={null}>
          <HelpSheet at={at} />
        </Suspense>
      )}
    </>
  )
}
