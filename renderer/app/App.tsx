import { Suspense, useEffect } from 'react'
import { useWedge } from '../scan/useWedge.ts'
import { TourWhenOpen } from '../tour/TourWhenOpen.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { type Actions, useActions } from './actions.ts'
import { makeCard, printCard } from './card.ts'
import { FaultSheets } from './faults/FaultSheets.tsx'
import { Header } from './Header.tsx'
import { RefusedFile } from './opening/RefusedFile.tsx'
import { useOpening } from './opening/useOpening.ts'
import { PartNav } from './PartNav.tsx'
import { partOf, parts } from './parts.ts'
import { hear, loadAll, loadRack } from './readRack.ts'
import { go, type Screen, screens, useRoute } from './route.ts'
import { StatusLine } from './StatusLine.tsx'
import { sayNothing, useApp } from './store.ts'
import { openJob, takeByCode } from './storeJob.ts'
import { undo } from './storeRack.ts'
import { transport } from './transport.ts'
import { Unbroken } from './Unbroken.tsx'
import { useKeepAwake } from './useAwake.ts'
import { useMenu } from './useMenu.ts'
import { useShortcuts } from './useShortcuts.ts'
import { useTheme } from './useTheme.ts'

/** The window: header, the screen of the address, status line. */
export const App = () => {
  const { screen, part } = useRoute()
  const code = useApp((app) => app.tool?.code ?? null)
  useHost()
  useToolOfAddress()
  useTheme()
  useWedge()
  useOpening()
  useMenu()
  useShortcuts()
  useKeepAwake()
  useActions(everywhere(code))
  const t = useTexts()
  const name = partOf(screen, part)
  const Part = parts[screen][name] as React.ComponentType
  return (
    <>
      <button type="button" className="skip-link" onClick={skip}>
        {t('common:skip')}
      </button>
      <div>
        <Header screen={screen} />
        <PartNav screen={screen} part={part} />
        <TourWhenOpen />
      </div>
      <main id="main" tabIndex={-1} className={`screen screen-${screens[screen]}`}>
        <h1 className="unseen">{t(`common:screen.${screen}`)}</h1>
        <Unbroken key={`${screen}/${name}`}>
          <Suspense fallback={<p className="page-note">{t('common:opening')}</p>}>
            <WhenReady>
              <Part />
            </WhenReady>
          </Suspense>
        </Unbroken>
      </main>
      <StatusLine />
      <RefusedFile />
      <FaultSheets />
    </>
  )
}

/** The address holds the screen, so what skips the header is a button that moves the focus. */
const skip = (): void => document.getElementById('main')?.focus()

const WhenReady = ({ children }: { readonly children: React.ReactNode }) => {
  const t = useTexts()
  const ready = useApp((app) => app.ready)
  const trouble = useApp((app) => app.trouble)
  if (trouble) return <Trouble sentence={problemSentence(t, trouble)} />
  if (!ready) return <p className="page-note">{t('common:opening')}</p>
  return children
}

const Trouble = ({ sentence }: { readonly sentence: string }) => {
  const t = useTexts()
  return (
    <div className="page-note" role="alert">
      <p>{sentence}</p>
      <button type="button" className="key" onClick={() => void loadAll()}>
        {t('common:tryAgain')}
      </button>
    </div>
  )
}

const useHost = (): void =>
  useEffect(() => {
    void loadRack()
    return transport.onEvent(hear)
  }, [])

/** The tool in the address is the tool in hand, and its job is opened on every screen that needs it. */
const useToolOfAddress = (): void => {
  const { screen, code, part } = useRoute()
  const ready = useApp((app) => app.ready)
  const held = useApp((app) => app.tool)
  const hasJob = useApp((app) => app.job !== null)
  useEffect(() => {
    if (ready && code !== null) void takeByCode(code)
  }, [ready, code])
  useEffect(() => {
    if (code === null && held) go(screen, held.code, part)
  }, [code, held, part, screen])
  useEffect(() => {
    if (held && !hasJob && screen !== 'rack') void openJob()
  }, [held, hasJob, screen])
}

/** What can be done from every screen. @param code the tool in hand */
const everywhere = (code: string | null): Actions => ({
  ...Object.fromEntries(
    (Object.keys(screens) as Screen[]).map((screen) => [
      `go.${screen}`,
      () => {
        sayNothing()
        go(screen, code)
      },
    ]),
  ),
  jobCard: () => void makeCard(),
  printCard: () => void printCard(),
  undo: () => void undo(),
})
