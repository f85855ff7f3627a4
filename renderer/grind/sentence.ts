import type { TFunction } from 'i18next'
import type { Moment } from './useLiveGrind.ts'

/** What the sentence needs beside the moment. */
export interface SentenceFacts {
  readonly stepsPerSweep: number
  /** Null: nothing is wanted that is told of. */
  readonly wantedMm: number | null
  /** Relief that the whole grind is predicted to leave; null: not known, or not to be told. */
  readonly foretoldMm: number | null
  readonly lifted: boolean
  readonly inWords: (mm: number) => string
}

/** Load nearer to the middle than this is in the middle (mm): the width of a fingertip's centre. */
const MIDDLE_MM = 3
/** Corners nearer to each other than this are told as one (mm): what two decimals show. */
const SAME_MM = 0.01
/** A grind foretold to end further from what is wanted than this share of it and this length says so: more than measuring errs. */
const BESIDE_SHARE = 0.15
const BESIDE_MM = 0.02
/** Ink shares below this are none left, above its complement none gone. */
const INK_EDGE = 0.005

const whereKey = (moment: Moment, lifted: boolean): string => {
  const { handFromStep, step, lastStep } = moment
  if (lifted) return 'lifted'
  if (moment.held) return 'held'
  if (moment.playing) return 'playing'
  if (step === 0) return 'start'
  if (handFromStep !== null && step > handFromStep) return 'byHand'
  return step === lastStep ? 'end' : 'paused'
}

const placeKey = ({ loadPlaceMm }: Moment): string =>
  Math.abs(loadPlaceMm) < MIDDLE_MM ? 'middle' : loadPlaceMm < 0 ? 'left' : 'right'

const loadPart = (t: TFunction, moment: Moment, { lifted }: SentenceFacts): string =>
  lifted || moment.step === 0 ? '' : t(`grind:sentence.load.${placeKey(moment)}.${moment.bearing}`)

const wantedPart = (t: TFunction, { wantedMm, foretoldMm, inWords }: SentenceFacts): string => {
  if (wantedMm === null) return ''
  const beside = foretoldMm !== null && Math.abs(foretoldMm - wantedMm) > Math.max(BESIDE_SHARE * wantedMm, BESIDE_MM)
  return beside
    ? t('grind:sentence.wantedBeside', { wanted: inWords(wantedMm), foretold: inWords(foretoldMm) })
    : t('grind:sentence.wanted', { wanted: inWords(wantedMm) })
}

const reliefPart = (t: TFunction, moment: Moment, facts: SentenceFacts): string => {
  if (moment.step === 0) return wantedPart(t, facts)
  const { wantedMm, inWords } = facts
  const params = {
    left: inWords(moment.reliefLeftMm),
    right: inWords(moment.reliefRightMm),
    wanted: inWords(wantedMm ?? 0),
  }
  const same = Math.abs(moment.reliefLeftMm - moment.reliefRightMm) < SAME_MM
  return t(`grind:sentence.${wantedMm === null ? 'reliefAlone' : 'relief'}.${same ? 'same' : 'apart'}`, params)
}

const inkPart = (t: TFunction, { inkLeftShare, step }: Moment): string => {
  if (step === 0 || inkLeftShare > 1 - INK_EDGE) return t('grind:sentence.ink.whole')
  if (inkLeftShare < INK_EDGE) return t('grind:sentence.ink.gone')
  return t('grind:sentence.ink.part', { share: Math.round(100 * inkLeftShare) })
}

/** Says what the picture shows, in one line. */
export const momentSentence = (t: TFunction, moment: Moment, facts: SentenceFacts): string =>
  [
    t(`grind:sentence.where.${whereKey(moment, facts.lifted)}`, {
      sweep: Math.floor(moment.sweep),
      sweeps: Math.floor(moment.lastStep / facts.stepsPerSweep),
    }),
    loadPart(t, moment, facts),
    reliefPart(t, moment, facts),
    inkPart(t, moment),
  ]
    .filter((part) => part !== '')
    .join(' ')
