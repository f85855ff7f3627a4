import type { ToolLine } from '../../main/contract/entities.ts'
import { shortDate } from '../ui/dates.ts'
import { IronMark } from '../ui/IronMark.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { ReliefLine } from './ReliefLine.tsx'

/** What the list says of one tool. */
export const ToolCells = ({ tool }: { readonly tool: ToolLine }) => {
  const t = useTexts()
  const figures = useFigures()
  const { widthMm, thicknessMm, seatAngleDeg, bevelAngleDeg, projectionMm, reliefMm } = tool
  const size = `${figures.of('blade.widthMm', widthMm).text} × ${figures.of('blade.thicknessMm', thicknessMm).text}`
  const where = [tool.place, tool.holder].filter(Boolean).join(', ')
  return (
    <>
      <td data-column="code">
        <IronMark dot={tool.dotCorner} /> {tool.code}
      </td>
      <td data-column="tool">{tool.name}</td>
      <td data-column="size">{size}</td>
      <td data-column="seat">{seatAngleDeg === null ? '' : figures.of('blade.seatAngleDeg', seatAngleDeg).text}</td>
      <td data-column="bevel">{figures.of('aim.bevelAngleDeg', bevelAngleDeg).text}</td>
      <td data-column="projection">{figures.of('aim.projectionMm', projectionMm).text}</td>
      <td data-column="relief">
        <ReliefLine wantedMm={reliefMm} measuredMm={tool.measuredReliefMm} />
        {reliefMm === 0 ? t('rack:square') : figures.of('aim.reliefMm', reliefMm).text}
      </td>
      <td data-column="ground">{tool.lastGroundAt === null ? '' : shortDate(tool.lastGroundAt)}</td>
      <td data-column="honed">{tool.honings === 0 ? '' : tool.honings}</td>
      <td data-column="where">
        {where} <Back tool={tool} />
      </td>
      <td data-column="due">{tool.due !== null && t(`rack:due.${tool.due}`)}</td>
    </>
  )
}

/** When it is wanted back; marked once the day has passed. */
const Back = ({ tool: { dueBack } }: { readonly tool: ToolLine }) => {
  const t = useTexts()
  if (dueBack === null) return null
  const late = dueBack < new Date().toISOString().slice(0, 10)
  return (
    <span className={late ? 'late' : 'muted'}>
      {t(late ? 'rack:back.late' : 'rack:back.by', { day: shortDate(dueBack) })}
    </span>
  )
}
