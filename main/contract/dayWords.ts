import type { TFunction } from 'i18next'
import { quantities } from '../../geometry/quantities.ts'
import type { DaySetting, QueueLine } from './day.ts'
import type { Settings } from './entities.ts'
import { figure, joined } from './figures.ts'

/** A day's settings in words, alike on screen and on paper. */

type LengthUnit = Settings['lengthUnit']

/** @returns where the bar stands, and how that is measured */
export const barInWords = (t: TFunction, { barMm, barMeasure }: DaySetting, lengthUnit: LengthUnit) => ({
  figure: joined(figure(barMm, 'mm', quantities.aim.barDistanceMm.decimals, lengthUnit)),
  how: t(`day:barMeasure.${barMeasure}`),
})

const PLAY_DECIMALS = 2

const bothSides = (t: TFunction, left: string, right: string): string =>
  left === right ? t('day:stops.each', { each: left }) : t('day:stops.sides', { left, right })

/** @returns how the stops are set: in turns where the screw is known, else by free play; and what is to be said beside */
export const stopsInWords = (t: TFunction, setting: DaySetting, lengthUnit: LengthUnit) => {
  const { turns, freePlay, settings } = setting
  if (settings > 1) return { main: t('day:stops.several', { count: settings }), note: t('day:stops.onCard') }
  const play = (mm: number): string => joined(figure(mm, 'mm', PLAY_DECIMALS, lengthUnit))
  const played = freePlay && bothSides(t, play(freePlay.leftMm), play(freePlay.rightMm))
  if (freePlay && turns && turns.left + turns.right > 0) {
    const said = (count: number): string => joined(figure(count, 'turn', quantities.motion.stopTurnsLeft.decimals))
    return { main: bothSides(t, said(turns.left), said(turns.right)), note: t('day:stops.play', { play: played }) }
  }
  if (freePlay && freePlay.leftMm + freePlay.rightMm > 0) return { main: played ?? '', note: t('day:stops.freePlay') }
  return { main: t('day:stops.none'), note: '' }
}

/** @returns why an iron stands where it does, in one sentence or two */
export const whyInWords = (t: TFunction, { why, setting }: QueueLine, lengthUnit: LengthUnit): string =>
  why
    .map(({ code, params }) =>
      t(`day:why.${code}`, {
        lengthUnit,
        ...params,
        station: setting?.station.name ?? '',
        fixture: setting?.fixture.name ?? '',
      }),
    )
    .join(' ')
