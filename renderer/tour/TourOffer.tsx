import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { declineTour, openTour } from './useTour.ts'

/** The walk round is offered in a line until it is taken or declined, and never again on this data folder. */
export const TourOffer = () => {
  const t = useTexts()
  const seen = useApp((app) => app.workshop?.tourSeen ?? true)
  if (seen) return null
  return (
    <p className="rack-tour">
      {t('common:tour.offer')}{' '}
      <button type="button" className="word" onClick={openTour}>
        {t('common:tour.take')}
      </button>{' '}
      <button type="button" className="word" onClick={declineTour}>
        {t('common:tour.decline')}
      </button>
    </p>
  )
}
