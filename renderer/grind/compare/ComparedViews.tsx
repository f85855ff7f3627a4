import type { ComponentProps } from 'react'
import { planOf } from '../../../geometry/aim.ts'
import { problemSentence, useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { BevelView } from '../BevelView.tsx'
import { GlassView } from '../GlassView.tsx'
import { useMoment } from '../useLiveGrind.ts'
import { deepestMeasuredMm } from '../views/measured.ts'
import { type Other, useComparing } from './comparing.ts'
import { SAME_EDGE_MM } from './deviation.ts'
import { ApartMark, OtherCurve, OtherSample } from './OtherCurve.tsx'
import { TurnKey } from './TurnKey.tsx'
import { useOtherDot, useOtherName } from './useNames.ts'
import { useDeepestMm, usePair } from './useTogether.ts'
import './compare.css'

type GlassProps = ComponentProps<typeof GlassView>
type BevelProps = ComponentProps<typeof BevelView>

/** The glass, with the other job's edge in it while two are compared. */
export const ComparedGlass = (props: GlassProps) => {
  const other = useComparing((comparing) => comparing.other)
  return other ? <GlassWithOther {...props} other={other} /> : <GlassWithout {...props} />
}

/** Nothing else in the glass; if there should be, why it is not. */
const GlassWithout = (props: GlassProps) => {
  const t = useTexts()
  const name = useOtherName()
  const [found] = useComparing((comparing) => comparing.problems)
  const foot = found && (
    <p className="compare-foot">
      {name}: {problemSentence(t, found)}
    </p>
  )
  return <GlassView {...props} also={{ deepestMm: 0, foot }} />
}

const GlassWithOther = ({ other, ...props }: GlassProps & { readonly other: Other }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const name = useOtherName()
  const moment = useMoment(other.running)
  const turned = useComparing((comparing) => comparing.turned)
  const deepestMm = Math.max(
    useDeepestMm(other.running),
    useDeepestMm(props.running),
    deepestMeasuredMm(props.measured),
  )
  const { together } = other
  const behind = turned ? props.running : other.running
  const plan = planOf(other.running.job)
  const instead = { running: other.running, moment, plan: plan.ok ? plan.value : null, predicted: null, measured: null }
  const shown = turned ? { ...props, ...instead } : props
  const deviation = usePair(other)?.deviation
  // While it plays the curves are drawn more often than figures are renewed: the mark would not meet them.
  const apart = deviation && !props.moment.playing && Math.abs(deviation.byMm) >= SAME_EDGE_MM ? deviation : null
  const reliefs = {
    name,
    left: inWords(moment.reliefLeftMm, 'mm', 2),
    right: inWords(moment.reliefRightMm, 'mm', 2),
  }
  const cut = other.running.job.blade.widthMm > props.running.job.blade.widthMm
  return (
    <GlassView
      {...shown}
      also={{
        deepestMm,
        paired: { together, side: turned ? 'other' : 'own' },
        says: t('compare:glass.reliefs', reliefs),
        nowName: turned ? t('compare:glass.other') : t('grind:glass.now'),
        draw: (scale, heightPx) => (
          <>
            <OtherCurve
              running={behind}
              scale={scale}
              plotPx={props.room.plotPx}
              heightPx={heightPx}
              paired={{ together, side: turned ? 'own' : 'other' }}
            />
            {apart && <ApartMark deviation={apart} scale={scale} />}
          </>
        ),
        foot: (
          <div className="compare-foot">
            <span className="compare-name">
              <OtherSample /> {turned ? t('compare:this') : t('compare:glass.reliefs', reliefs)}
            </span>
            {cut && <span>{t('compare:glass.cut')}</span>}
            <TurnKey own={props.running.job} other={other.running.job} name={name} />
          </div>
        ),
      }}
    />
  )
}

/** The bevel, or the other one's while the key is held. */
export const ComparedBevel = (props: BevelProps) => {
  const other = useComparing((comparing) => (comparing.turned ? comparing.other : null))
  return other ? <OtherBevel {...props} running={other.running} /> : <BevelView {...props} />
}

const OtherBevel = (props: BevelProps) => <BevelView {...props} moment={useMoment(props.running)} dot={useOtherDot()} />
