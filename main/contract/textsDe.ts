import awake from '../../assets/texts/de/awake.json' with { type: 'json' }
import card from '../../assets/texts/de/card.json' with { type: 'json' }
import cautions from '../../assets/texts/de/cautions.json' with { type: 'json' }
import command from '../../assets/texts/de/command.json' with { type: 'json' }
import common from '../../assets/texts/de/common.json' with { type: 'json' }
import compare from '../../assets/texts/de/compare.json' with { type: 'json' }
import copies from '../../assets/texts/de/copies.json' with { type: 'json' }
import day from '../../assets/texts/de/day.json' with { type: 'json' }
import dressing from '../../assets/texts/de/dressing.json' with { type: 'json' }
import due from '../../assets/texts/de/due.json' with { type: 'json' }
import errand from '../../assets/texts/de/errand.json' with { type: 'json' }
import faults from '../../assets/texts/de/faults.json' with { type: 'json' }
import formulas from '../../assets/texts/de/formulas.json' with { type: 'json' }
import grind from '../../assets/texts/de/grind.json' with { type: 'json' }
import handles from '../../assets/texts/de/handles.json' with { type: 'json' }
import help from '../../assets/texts/de/help.json' with { type: 'json' }
import history from '../../assets/texts/de/history.json' with { type: 'json' }
import honing from '../../assets/texts/de/honing.json' with { type: 'json' }
import hosts from '../../assets/texts/de/hosts.json' with { type: 'json' }
import inOut from '../../assets/texts/de/inOut.json' with { type: 'json' }
import jobFile from '../../assets/texts/de/jobFile.json' with { type: 'json' }
import labels from '../../assets/texts/de/labels.json' with { type: 'json' }
import learnt from '../../assets/texts/de/learnt.json' with { type: 'json' }
import many from '../../assets/texts/de/many.json' with { type: 'json' }
import measure from '../../assets/texts/de/measure.json' with { type: 'json' }
import out from '../../assets/texts/de/out.json' with { type: 'json' }
import people from '../../assets/texts/de/people.json' with { type: 'json' }
import photos from '../../assets/texts/de/photos.json' with { type: 'json' }
import plan from '../../assets/texts/de/plan.json' with { type: 'json' }
import predict from '../../assets/texts/de/predict.json' with { type: 'json' }
import problems from '../../assets/texts/de/problems.json' with { type: 'json' }
import quantities from '../../assets/texts/de/quantities.json' with { type: 'json' }
import rack from '../../assets/texts/de/rack.json' with { type: 'json' }
import reports from '../../assets/texts/de/reports.json' with { type: 'json' }
import scan from '../../assets/texts/de/scan.json' with { type: 'json' }
import scene from '../../assets/texts/de/scene.json' with { type: 'json' }
import setUp from '../../assets/texts/de/setUp.json' with { type: 'json' }
import shortcuts from '../../assets/texts/de/shortcuts.json' with { type: 'json' }
import spoken from '../../assets/texts/de/spoken.json' with { type: 'json' }
import square from '../../assets/texts/de/square.json' with { type: 'json' }
import stocktake from '../../assets/texts/de/stocktake.json' with { type: 'json' }
import teach from '../../assets/texts/de/teach.json' with { type: 'json' }
import tools from '../../assets/texts/de/tools.json' with { type: 'json' }
import units from '../../assets/texts/de/units.json' with { type: 'json' }
import views from '../../assets/texts/de/views.json' with { type: 'json' }
import wood from '../../assets/texts/de/wood.json' with { type: 'json' }
import worksheet from '../../assets/texts/de/worksheet.json' with { type: 'json' }
import write from '../../assets/texts/de/write.json' with { type: 'json' }

/** The catalogue in German, read where it is spoken; what is not in it stands in English. */
export const german = {
  awake,
  card,
  cautions,
  command,
  common,
  compare,
  copies,
  day,
  dressing,
  due,
  errand,
  faults,
  formulas,
  grind,
  handles,
  help,
  history,
  honing,
  hosts,
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
  square,
  stocktake,
  teach,
  tools,
  units,
  views,
  wood,
  worksheet,
  write,
}
