import { useState } from 'react'
import { glbOf } from '../../../geometry/glb.ts'
import { type Problem, problem } from '../../../geometry/result.ts'
import { solidOf } from '../../../geometry/solid.ts'
import { stlOf } from '../../../geometry/stl.ts'
import { fixed } from '../../../main/contract/figures.ts'
import { handOverBytes } from '../../app/handOver.ts'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import type { Moment, Running } from '../useLiveGrind.ts'
import { OutPart } from './OutPart.tsx'
import { fileName } from './pictured.ts'

const forms = ['glb', 'stl'] as const
type Form = (typeof forms)[number]

const mediaTypes: Readonly<Record<Form, string>> = { glb: 'model/gltf-binary', stl: 'model/stl' }

/** The lower end of the blade at the moment shown, as a body for solid modellers. */
export const SolidPart = ({ running, moment }: { readonly running: Running; readonly moment: Moment }) => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const save = (form: Form) => {
    const { live, shape, job } = running
    const { latest } = live
    if (!latest || latest.run !== shape.run) return setProblems([problem('solidNotReady')])
    const mesh = solidOf(shape, latest.vMm)
    const { sweep } = latest
    const about = { blade: `${tool?.code ?? ''} ${tool?.name ?? ''}`.trim(), widthMm: job.blade.widthMm, sweep }
    const file = fileName([tool?.code ?? '', 'sweep', sweep.toFixed(2)], form)
    handOverBytes(form === 'glb' ? glbOf(mesh, about) : stlOf(mesh), mediaTypes[form], file, 'out:handedOver')
    setProblems([])
  }
  const sentence = t('out:solid.sentence', { sweep: fixed(moment.sweep, 2) })
  return (
    <OutPart heading={t('out:solid.heading')} sentence={sentence} problems={problems}>
      <div className="out-keys">
        {forms.map((form) => (
          <button key={form} type="button" className="key" onClick={() => save(form)}>
            {t(`out:solid.${form}`)}
          </button>
        ))}
      </div>
    </OutPart>
  )
}
