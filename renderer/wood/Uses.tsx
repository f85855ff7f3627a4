import type { ReactNode } from 'react'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { Seen } from './seen.ts'
import type { WoodSetting } from './setting.ts'

interface UsesProps {
  readonly seen: Seen
  readonly setting: WoodSetting
  readonly onChange: (patch: Partial<WoodSetting>) => void
  readonly bevelSide: 'up' | 'down'
}

/** What the edge does at each use: one shaving, passes side by side, a joint, in front of a cap iron. */
export const Uses = (props: UsesProps) => (
  <div className="wood-uses">
    <Shaving {...props} />
    <Passes {...props} />
    <Jointing {...props} />
    <CapIron {...props} />
  </div>
)

const Use = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <section aria-label={name}>
    <h2>{name}</h2>
    {children}
  </section>
)

/** A crown nearer to the middle than this is in it (mm). */
const IN_MIDDLE_MM = 0.5
/** Under half the finest leaf's step an edge is straight (mm). */
const STRAIGHT_MM = 0.005

const Shaving = ({ seen, setting }: UsesProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { cut, crownMm, pitchDeg, clearanceDeg } = seen
  const side = t(`common:side.${crownMm < 0 ? 'left' : 'right'}`)
  const where = crownOf(seen, setting)
  return (
    <Use name={t('wood:shaving.name')}>
      <p>
        {t('wood:shaving.cut', {
          width: inWords(cut.widthMm, 'mm', 1),
          thick: inWords(cut.thickestMm, 'mm', 2),
          area: inWords(cut.areaMm2, 'mm2', 2),
        })}
      </p>
      <p>{t(`wood:shaving.crown.${where}`, { by: inWords(Math.abs(crownMm), 'mm', 1), side })}</p>
      <p className="muted">
        {t(setting.skewDeg === 0 ? 'wood:shaving.angles' : 'wood:shaving.anglesAskew', {
          pitch: inWords(pitchDeg, 'deg', 1),
          clearance: inWords(clearanceDeg, 'deg', 1),
        })}
      </p>
    </Use>
  )
}

const crownOf = ({ crownMm, camberMm, profile }: Seen, { leverDeg }: WoodSetting) => {
  if (camberMm < STRAIGHT_MM && leverDeg === 0) return 'even'
  if (Math.abs(crownMm) < IN_MIDDLE_MM) return 'middle'
  const atCorner = Math.abs(crownMm) > (profile.uMm.at(-1) as number) / 1.001
  return atCorner && leverDeg !== 0 ? 'corner' : 'aside'
}

const Passes = ({ seen, setting, onChange }: UsesProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { corners, camberMm, depthMm } = seen
  const deepest = Math.max(corners.leftMm, corners.rightMm)
  return (
    <Use name={t('wood:passes.name')}>
      <div className="wood-fields">
        <FigureField
          quantity="wood.stepMm"
          value={setting.stepMm}
          allowEmpty
          onCommit={(stepMm) => onChange({ stepMm })}
        />
        <FigureField
          quantity="wood.boardMm"
          value={setting.boardMm}
          onCommit={(boardMm) => boardMm !== null && onChange({ boardMm })}
        />
      </div>
      <p>
        {setting.stepMm === null
          ? t('wood:passes.one')
          : seen.ridgeMm === null
            ? t('wood:passes.strip')
            : t('wood:passes.ridge', { ridge: inWords(seen.ridgeMm, 'mm', 3) })}
      </p>
      {deepest > 0 ? (
        <p className="caution">{t(`wood:passes.dig.${digOf(seen)}`, { step: inWords(deepest, 'mm', 2) })}</p>
      ) : (
        <p className="muted">
          {t(camberMm >= depthMm ? 'wood:passes.clear' : 'wood:passes.narrow', { camber: inWords(camberMm, 'mm', 2) })}
        </p>
      )}
    </Use>
  )
}

const digOf = ({ corners: { leftMm, rightMm } }: Seen): 'both' | 'left' | 'right' =>
  leftMm > 0 && rightMm > 0 ? 'both' : leftMm > 0 ? 'left' : 'right'

/** An angle below this is square as far as any square tells: 0.01 mm over the edge of a 30 mm board (degrees). */
const SQUARE_DEG = 0.02

const Jointing = ({ seen: { joint }, setting, onChange }: UsesProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const side = joint === null || Math.abs(joint.angleDeg) < SQUARE_DEG ? 'none' : joint.angleDeg > 0 ? 'left' : 'right'
  return (
    <Use name={t('wood:joint.name')}>
      <div className="wood-fields">
        <FigureField
          quantity="wood.stockMm"
          value={setting.stockMm}
          onCommit={(stockMm) => stockMm !== null && onChange({ stockMm })}
        />
        <FigureField
          quantity="wood.shiftMm"
          value={setting.shiftMm}
          onCommit={(shiftMm) => shiftMm !== null && onChange({ shiftMm })}
        />
      </div>
      {joint === null ? (
        <p className="caution">{t('wood:joint.beyond')}</p>
      ) : (
        <>
          <p>{t(`wood:joint.angle.${side}`, { angle: inWords(Math.abs(joint.angleDeg), 'deg', 2) })}</p>
          <p className="muted">{t('wood:joint.hollow', { hollow: inWords(Math.max(0, joint.hollowMm), 'mm', 3) })}</p>
        </>
      )}
    </Use>
  )
}

const CapIron = ({ seen: { cap, camberMm, seatSine }, bevelSide }: UsesProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const words = {
    setback: inWords(cap?.setbackMm ?? 0, 'mm', 2),
    relief: inWords(camberMm / seatSine, 'mm', 2),
    left: inWords(Math.max(0, (cap?.setbackMm ?? 0) - camberMm / seatSine), 'mm', 2),
  }
  return (
    <Use name={t('wood:cap.name')}>
      {cap === null ? (
        <p className="muted">{t(`wood:cap.none.${bevelSide}`)}</p>
      ) : (
        <p className={cap.advice === 'capClear' ? undefined : 'caution'}>{t(`wood:cap.${cap.advice}`, words)}</p>
      )}
    </Use>
  )
}
