import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { NoJob } from '../app/NoJob.tsx'
import { ProblemNote } from '../app/ProblemNote.tsx'
import { useApp } from '../app/store.ts'
import { useReadings } from '../measure/useReadings.ts'
import { shortDate } from '../ui/dates.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type KnownEdge, knownEdges } from './edges.ts'
import { SectionDrawing } from './SectionDrawing.tsx'
import { seenBy } from './seen.ts'
import { changeWood, useWoodSetting, type WoodSetting } from './setting.ts'
import { Uses } from './Uses.tsx'
import './wood.css'

/** Wood view: the edge as the wood meets it. */
export const WoodPart = () => {
  const t = useTexts()
  const tool = useApp((app) => app.tool)
  const report = useApp((app) => app.report)
  if (!tool) return <NoJob />
  if (tool.seatAngleDeg === null) return <p className="page-note">{t('wood:noSeat')}</p>
  return (
    <div className="wood-part">
      <div className="plan-note">
        <ProblemNote />
      </div>
      {report ? <InWood tool={tool} report={report} /> : <p className="page-note">{t('plan:working')}</p>}
    </div>
  )
}

const InWood = ({ tool, report }: { readonly tool: Tool; readonly report: Report }) => {
  const readings = useReadings(tool.id)
  const setting = useWoodSetting(tool.id)
  const edges = knownEdges(report, readings ?? [])
  const edge = edges.find(({ key }) => key === setting.edge) ?? (edges[0] as KnownEdge)
  const seen = seenBy(edge.profile, tool, report, setting)
  const change = (patch: Partial<WoodSetting>) => changeWood(tool.id, patch)
  if (!seen) return null
  return (
    <>
      <Looked edges={edges} edge={edge} setting={setting} depthMm={seen.depthMm} onChange={change} />
      <SectionDrawing seen={seen} setting={setting} onChange={change} />
      <Uses seen={seen} setting={setting} onChange={change} bevelSide={tool.bevelSide} />
    </>
  )
}

interface LookedProps {
  readonly edges: readonly KnownEdge[]
  readonly edge: KnownEdge
  readonly setting: WoodSetting
  readonly depthMm: number
  readonly onChange: (patch: Partial<WoodSetting>) => void
}

/** Which edge is looked at, how deep it is set, how lever and plane stand. */
const Looked = ({ edges, edge, setting, depthMm, onChange }: LookedProps) => {
  const t = useTexts()
  return (
    <section className="wood-looked" aria-label={t('wood:looked')}>
      <Options
        legend={t('wood:edge.legend')}
        options={edges.map(({ key, line }) => ({
          value: key,
          name: t(`wood:edge.${key}`, { date: line ? shortDate(line.at) : '' }),
        }))}
        value={edge.key}
        onChoose={(key) => onChange({ edge: key })}
      />
      <FigureField
        quantity="aim.shavingDepthMm"
        label={t('wood:depth')}
        size="large"
        value={depthMm}
        onCommit={(value) => value !== null && onChange({ depthMm: value })}
      />
      <FigureField
        quantity="wood.leverDeg"
        size="large"
        value={setting.leverDeg}
        onCommit={(value) => value !== null && onChange({ leverDeg: value })}
      />
      <FigureField
        quantity="wood.skewDeg"
        size="large"
        value={setting.skewDeg}
        onCommit={(value) => value !== null && onChange({ skewDeg: value })}
      />
      <Camber edge={edge} />
    </section>
  )
}

const Camber = ({ edge }: { readonly edge: KnownEdge }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { behindMm } = edge.profile
  const relief = ((behindMm[0] as number) + (behindMm.at(-1) as number)) / 2
  return <p className="wood-note muted">{t(`wood:edgeNote.${edge.key}`, { relief: inWords(relief, 'mm', 2) })}</p>
}
