import wheelAndHands from '../../assets/lessons/de/01-wheel-and-hands.json' with { type: 'json' }
import whyACurve from '../../assets/lessons/de/02-why-a-curve.json' with { type: 'json' }
import theSeat from '../../assets/lessons/de/03-the-seat.json' with { type: 'json' }
import lateralLever from '../../assets/lessons/de/04-lateral-lever.json' with { type: 'json' }
import measuring from '../../assets/lessons/de/05-measuring.json' with { type: 'json' }
import theTriangle from '../../assets/lessons/de/06-the-triangle.json' with { type: 'json' }
import ink from '../../assets/lessons/de/07-ink.json' with { type: 'json' }
import squareAndDressing from '../../assets/lessons/de/08-square-and-dressing.json' with { type: 'json' }
import freePlay from '../../assets/lessons/de/09-free-play.json' with { type: 'json' }
import fingers from '../../assets/lessons/de/10-fingers.json' with { type: 'json' }
import freshen from '../../assets/lessons/de/11-freshen.json' with { type: 'json' }
import roofAndArc from '../../assets/lessons/de/12-roof-and-arc.json' with { type: 'json' }
import honing from '../../assets/lessons/de/13-honing.json' with { type: 'json' }
import faultHunt from '../../assets/lessons/de/14-fault-hunt.json' with { type: 'json' }

/** The program's own lessons in German. */
export const german: readonly unknown[] = [
  wheelAndHands,
  whyACurve,
  theSeat,
  lateralLever,
  measuring,
  theTriangle,
  ink,
  squareAndDressing,
  freePlay,
  fingers,
  freshen,
  roofAndArc,
  honing,
  faultHunt,
]
