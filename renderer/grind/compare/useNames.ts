import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { type Choice, useComparing } from './comparing.ts'
import { ironOf } from './useSubject.ts'

interface Offer {
  readonly value: Choice
  readonly name: string
}

/** What the job on the model can be compared with now, each with its name; what is chosen and gone stays among them. */
export const useOffers = (): readonly Offer[] => {
  const t = useTexts()
  const { tools, tool, job, trial } = useApp()
  const { kept, before, choice } = useComparing()
  const offer = (there: boolean, value: Choice, params = {}): readonly Offer[] =>
    there ? [{ value, name: t(`compare:choice.${value}`, params) }] : []
  const words = { sweep: kept?.sweep ?? 0, iron: kept?.iron ?? '' }
  const offers: readonly Offer[] = [
    ...offer(true, 'none'),
    ...offer(trial !== null, 'own'),
    ...offer(before !== null && before.jobId === job?.id, 'before'),
    ...offer(kept !== null, 'kept', words),
    ...offer(kept !== null, 'keptMoment', words),
    ...offer(true, 'start'),
    ...offer(true, 'end'),
    ...tools
      .filter(({ id }) => id !== tool?.id)
      .map(({ id, code, name }): Offer => ({ value: `iron:${id}`, name: `${code} ${name}` })),
  ]
  return offers.some(({ value }) => value === choice)
    ? offers
    : [...offers, { value: choice, name: t('compare:choice.gone') }]
}

/** The name of what is compared with, as the table and the glass write it. */
export const useOtherName = (): string => {
  const t = useTexts()
  const { choice, kept } = useComparing()
  const iron = useApp((app) => app.tools.find(({ id }) => id === ironOf(choice)))
  return iron
    ? `${iron.code} ${iron.name}`
    : t(`compare:short.${ironOf(choice) ? 'gone' : choice}`, { sweep: kept?.sweep ?? 0 })
}

/** The corner of the other iron that carries the dot. */
export const useOtherDot = (): 'left' | 'right' => {
  const { choice, kept } = useComparing()
  const tool = useApp(({ tools, tool }) => tools.find(({ id }) => id === ironOf(choice)) ?? tool)
  return (choice.startsWith('kept') ? kept?.dot : tool?.dotCorner) ?? 'left'
}
