import card from '../../assets/texts/de/card.json' with { type: 'json' }
import cautions from '../../assets/texts/de/cautions.json' with { type: 'json' }
import common from '../../assets/texts/de/common.json' with { type: 'json' }
import copies from '../../assets/texts/de/copies.json' with { type: 'json' }
import day from '../../assets/texts/de/day.json' with { type: 'json' }
import dressing from '../../assets/texts/de/dressing.json' with { type: 'json' }
import due from '../../assets/texts/de/due.json' with { type: 'json' }
import errand from '../../assets/texts/de/errand.json' with { type: 'json' }
import faults from '../../assets/texts/de/faults.json' with { type: 'json' }
import grind from '../../assets/texts/de/grind.json' with { type: 'json' }
import history from '../../assets/texts/de/history.json' with { type: 'json' }
import honing from '../../assets/texts/de/honing.json' with { type: 'json' }
import inOut from '../../assets/texts/de/inOut.json' with { type: 'json' }
import labels from '../../assets/texts/de/labels.json' with { type: 'json' }
import learnt from '../../assets/texts/de/learnt.json' with { type: 'json' }
import many from '../../assets/texts/de/many.json' with { type: 'json' }
import measure from '../../assets/texts/de/measure.json' with { type: 'json' }
import people from '../../assets/texts/de/people.json' with { type: 'json' }
import photos from '../../assets/texts/de/photos.json' with { type: 'json' }
import plan from '../../assets/texts/de/plan.json' with { type: 'json' }
import quantities from '../../assets/texts/de/quantities.json' with { type: 'json' }
import rack from '../../assets/texts/de/rack.json' with { type: 'json' }
import scan from '../../assets/texts/de/scan.json' with { type: 'json' }
import setUp from '../../assets/texts/de/setUp.json' with { type: 'json' }
import square from '../../assets/texts/de/square.json' with { type: 'json' }
import stocktake from '../../assets/texts/de/stocktake.json' with { type: 'json' }
import units from '../../assets/texts/de/units.json' with { type: 'json' }
import wood from '../../assets/texts/de/wood.json' with { type: 'json' }

/** The catalogue in German, read where it is spoken; what is not in it stands in English. */
export const german = {
  card,
  cautions,
  common,
  copies,
  day,
  dressing,
  due,
  errand,
  faults,
  grind,
  history,
  honing,
  inOut,
  labels,
  learnt,
  many,
  measure,
  people,
  photos,
  plan,
  quantities,
  rack,
  scan,
  setUp,
  square,
  stocktake,
  units,
  wood,
}
