import type { Symptom } from '../../geometry/diagnose.ts'
import { useTexts } from '../ui/texts.tsx'
import { setSeen } from './setting.ts'

/** Where each symptom is looked for, in the order in which one meets them. */
const groups: Readonly<Record<string, readonly Symptom[]>> = {
  ink: ['inkHeel', 'inkEdge', 'inkLeft', 'inkRight', 'inkMiddle', 'inkCorners'],
  edge: ['curveLess', 'curveMore', 'curveNone', 'cornerLeft', 'cornerRight', 'burrGaps', 'bandBroke'],
  wood: ['trackOne', 'trackBoth', 'chatter', 'dullSoon', 'colour'],
}

interface SymptomsProps {
  readonly toolId: string
  readonly seen: readonly Symptom[]
}

/** What can be seen, each with a small sketch, to be ticked. */
export const Symptoms = ({ toolId, seen }: SymptomsProps) => {
  const t = useTexts()
  return (
    <>
      {Object.entries(groups).map(([group, members]) => (
        <fieldset key={group} className="symptoms">
          <legend className="options-legend">{t(`faults:group.${group}`)}</legend>
          {members.map((symptom) => (
            <label key={symptom}>
              <input
                type="checkbox"
                checked={seen.includes(symptom)}
                onChange={(event) => setSeen(toolId, symptom, event.target.checked)}
              />
              <Sketch symptom={symptom} />
              <span>{t(`faults:symptom.${symptom}`)}</span>
            </label>
          ))}
        </fieldset>
      ))}
    </>
  )
}

/** Bare part of a bevel's face, 48 x 24: x, y, width, height. */
const bare: Partial<Record<Symptom, readonly (readonly [number, number, number, number])[]>> = {
  inkHeel: [[0, 0, 48, 8]],
  inkEdge: [[0, 16, 48, 8]],
  inkLeft: [[0, 0, 18, 24]],
  inkRight: [[30, 0, 18, 24]],
  inkMiddle: [[15, 0, 18, 24]],
  inkCorners: [
    [0, 0, 12, 24],
    [36, 0, 12, 24],
  ],
}

/** The edge from corner to corner, and for wood the track it leaves. */
const lines: Partial<Record<Symptom, string>> = {
  curveLess: 'M2 9Q24 5 46 9',
  curveMore: 'M2 21Q24 -10 46 21',
  curveNone: 'M2 9H46',
  cornerLeft: 'M2 20Q14 7 24 6Q36 6 46 9',
  cornerRight: 'M2 9Q12 6 24 6Q34 7 46 20',
  burrGaps: 'M2 9H14M22 9H30M38 9H46',
  bandBroke: 'M2 9H18L24 15L30 9H46',
  trackOne: 'M2 8H34V13H46',
  trackBoth: 'M2 13H10V8H38V13H46',
  chatter: 'M2 12L8 7L14 12L20 7L26 12L32 7L38 12L44 7',
  dullSoon: 'M2 10Q8 6 14 10T26 10T38 10T46 10',
}

const Sketch = ({ symptom }: { readonly symptom: Symptom }) => {
  const patches = bare[symptom]
  const line = lines[symptom]
  return (
    <svg width="48" height="24" viewBox="0 0 48 24" aria-hidden="true" className="symptom-sketch">
      {patches ? (
        <>
          <rect className="inked" width="48" height="24" />
          {patches.map(([x, y, width, height]) => (
            <rect key={x} className="bared" x={x} y={y} width={width} height={height} />
          ))}
        </>
      ) : line ? (
        <>
          <path className="steel" d={`${line}V24H2Z`} />
          <path className="now" d={line} />
        </>
      ) : (
        <rect className="symptom-colour" width="48" height="24" />
      )}
    </svg>
  )
}
