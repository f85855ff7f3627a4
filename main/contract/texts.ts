import i18next, { type i18n } from 'i18next'
import awake from '../../assets/texts/en/awake.json' with { type: 'json' }
import cautions from '../../assets/texts/en/cautions.json' with { type: 'json' }
import common from '../../assets/texts/en/common.json' with { type: 'json' }
import compare from '../../assets/texts/en/compare.json' with { type: 'json' }
import copies from '../../assets/texts/en/copies.json' with { type: 'json' }
import day from '../../assets/texts/en/day.json' with { type: 'json' }
import dressing from '../../assets/texts/en/dressing.json' with { type: 'json' }
import due from '../../assets/texts/en/due.json' with { type: 'json' }
import errand from '../../assets/texts/en/errand.json' with { type: 'json' }
import formulas from '../../assets/texts/en/formulas.json' with { type: 'json' }
import grind from '../../assets/texts/en/grind.json' with { type: 'json' }
import handles from '../../assets/texts/en/handles.json' with { type: 'json' }
import history from '../../assets/texts/en/history.json' with { type: 'json' }
import inOut from '../../assets/texts/en/inOut.json' with { type: 'json' }
import jobFile from '../../assets/texts/en/jobFile.json' with { type: 'json' }
import labels from '../../assets/texts/en/labels.json' with { type: 'json' }
import learnt from '../../assets/texts/en/learnt.json' with { type: 'json' }
import many from '../../assets/texts/en/many.json' with { type: 'json' }
import measure from '../../assets/texts/en/measure.json' with { type: 'json' }
import out from '../../assets/texts/en/out.json' with { type: 'json' }
import people from '../../assets/texts/en/people.json' with { type: 'json' }
import photos from '../../assets/texts/en/photos.json' with { type: 'json' }
import plan from '../../assets/texts/en/plan.json' with { type: 'json' }
import predict from '../../assets/texts/en/predict.json' with { type: 'json' }
import problems from '../../assets/texts/en/problems.json' with { type: 'json' }
import quantities from '../../assets/texts/en/quantities.json' with { type: 'json' }
import rack from '../../assets/texts/en/rack.json' with { type: 'json' }
import reports from '../../assets/texts/en/reports.json' with { type: 'json' }
import scan from '../../assets/texts/en/scan.json' with { type: 'json' }
import scene from '../../assets/texts/en/scene.json' with { type: 'json' }
import setUp from '../../assets/texts/en/setUp.json' with { type: 'json' }
import shortcuts from '../../assets/texts/en/shortcuts.json' with { type: 'json' }
import spoken from '../../assets/texts/en/spoken.json' with { type: 'json' }
import stocktake from '../../assets/texts/en/stocktake.json' with { type: 'json' }
import teach from '../../assets/texts/en/teach.json' with { type: 'json' }
import tools from '../../assets/texts/en/tools.json' with { type: 'json' }
import units from '../../assets/texts/en/units.json' with { type: 'json' }
import views from '../../assets/texts/en/views.json' with { type: 'json' }
import wood from '../../assets/texts/en/wood.json' with { type: 'json' }
import type { Unit } from '../../geometry/quantities.ts'
import { figure, joined } from './figures.ts'
import { type Direction, FIRST_LANGUAGE, type Language, language, setLanguage } from './language.ts'

/** The one catalogue, a namespace a screen or door; what only papers and hosts say is added in main/texts.ts. */
const english = {
  awake,
  cautions,
  common,
  copies,
  compare,
  day,
  dressing,
  due,
  errand,
  formulas,
  grind,
  handles,
  history,
  inOut,
  jobFile,
  labels,
  learnt,
  many,
  measure,
  out,
  people,
  photos,
  plan,
  predict,
  problems,
  quantities,
  rack,
  reports,
  scan,
  scene,
  setUp,
  shortcuts,
  spoken,
  stocktake,
  teach,
  tools,
  units,
  views,
  wood,
}

/** Quantities that sentences write themselves: `{{reliefMm, length(decimals: 2)}}`. */
const formats: Record<string, Unit> = { length: 'mm', angle: 'deg', turns: 'turn' }

/** The unit for lengths comes with the figures of a sentence, as `lengthUnit`; without it they are in mm. */
const addFormats = ({ services }: i18n): void => {
  for (const [name, unit] of Object.entries(formats)) {
    services.formatter?.add(name, (value, _language, { decimals, lengthUnit }) =>
      joined(figure(Number(value), unit, decimals, lengthUnit)),
    )
  }
}

type Catalogue = Readonly<Record<string, object>> & { readonly common: { readonly direction: string } }

const readers: Readonly<Partial<Record<Language, () => Promise<Catalogue>>>> = {
  de: async () => (await import('./textsDe.ts')).german,
}

/** Catalogues read so far, a language each. */
export const catalogues: Partial<Record<Language, Catalogue>> = { [FIRST_LANGUAGE]: english }

/** Has this thread write words and figures in a language from now on, and reads its catalogue where that was not done yet. */
export const speak = async (wanted: Language): Promise<void> => {
  const catalogue = catalogues[wanted] ?? (await readers[wanted]?.()) ?? english
  catalogues[wanted] = catalogue
  setLanguage(wanted, catalogue.common.direction as Direction)
}

/** @returns the texts in the language spoken, ready: `t('grind:play')`; no network, no waiting */
export const createTexts = (): i18n => {
  const texts = i18next.createInstance()
  void texts.init({
    lng: language(),
    fallbackLng: FIRST_LANGUAGE,
    ns: Object.keys(english),
    defaultNS: 'common',
    resources: { ...catalogues },
    interpolation: { escapeValue: false },
    initAsync: false,
  })
  addFormats(texts)
  return texts
}
