import type { TFunction } from 'i18next'
import type { ReactNode } from 'react'
import type { ToolLine } from '../../main/contract/entities.ts'
import type { SortColumn } from '../../main/contract/finding.ts'
import { shortDate } from '../ui/dates.ts'
import { IronMark } from '../ui/IronMark.tsx'
import type { Figures } from '../ui/useFigure.ts'
import { ReliefLine } from './ReliefLine.tsx'
import { Whereabouts } from './Whereabouts.tsx'

/** One column of the list. */
interface Column {
  readonly sort: SortColumn
  /** Shown where the workshop chose no columns of its own. */
  readonly usual: boolean
  readonly cell: (tool: ToolLine, t: TFunction, figures: Figures) => ReactNode
}

const day = (at: string | null): string => (at === null ? '' : shortDate(at))

/** All columns there are, in the order in which they are shown; their heads stand under `rack:column`. */
export const allColumns = {
  code: {
    sort: 'code',
    usual: true,
    cell: ({ dotCorner, code }) => (
      <>
        <IronMark dot={dotCorner} /> {code}
      </>
    ),
  },
  tool: { sort: 'name', usual: true, cell: ({ name }) => name },
  kind: { sort: 'kind', usual: false, cell: ({ kind }, t) => t(`common:toolKind.${kind}`) },
  maker: { sort: 'maker', usual: false, cell: ({ maker }) => maker },
  size: {
    sort: 'widthMm',
    usual: true,
    cell: ({ widthMm, thicknessMm }, _t, figures) => (
      <bdi dir="ltr">
        {`${figures.of('blade.widthMm', widthMm).text} × ${figures.of('blade.thicknessMm', thicknessMm).text}`}
      </bdi>
    ),
  },
  steel: { sort: 'steel', usual: false, cell: ({ steel }) => steel },
  lengthLeft: {
    sort: 'lengthLeftMm',
    usual: false,
    cell: ({ lengthLeftMm }, _t, figures) =>
      lengthLeftMm === null ? '' : figures.of('care.lengthLeftMm', lengthLeftMm).text,
  },
  seat: {
    sort: 'seatAngleDeg',
    usual: true,
    cell: ({ seatAngleDeg }, _t, figures) =>
      seatAngleDeg === null ? '' : figures.of('blade.seatAngleDeg', seatAngleDeg).text,
  },
  bevel: {
    sort: 'bevelAngleDeg',
    usual: true,
    cell: ({ bevelAngleDeg }, _t, figures) => figures.of('aim.bevelAngleDeg', bevelAngleDeg).text,
  },
  projection: {
    sort: 'projectionMm',
    usual: true,
    cell: ({ projectionMm }, _t, figures) => figures.of('aim.projectionMm', projectionMm).text,
  },
  relief: {
    sort: 'reliefMm',
    usual: true,
    cell: ({ reliefMm, measuredReliefMm }, t, figures) => (
      <>
        <ReliefLine wantedMm={reliefMm} measuredMm={measuredReliefMm} />
        {reliefMm === 0 ? t('rack:square') : figures.of('aim.reliefMm', reliefMm).text}
      </>
    ),
  },
  condition: { sort: 'condition', usual: false, cell: ({ condition }, t) => t(`common:condition.${condition}`) },
  ground: { sort: 'lastGroundAt', usual: true, cell: ({ lastGroundAt }) => day(lastGroundAt) },
  honed: { sort: 'honings', usual: true, cell: ({ honings }) => (honings === 0 ? '' : honings) },
  where: { sort: 'place', usual: true, cell: (tool) => <Whereabouts tool={tool} /> },
  seen: { sort: 'lastSeenAt', usual: false, cell: ({ lastSeenAt }) => day(lastSeenAt) },
  due: { sort: 'due', usual: true, cell: ({ due }, t) => due !== null && t(`rack:due.${due}`) },
} as const satisfies Record<string, Column>

export type ColumnName = keyof typeof allColumns

const names = Object.keys(allColumns) as readonly ColumnName[]

/** Without these two nobody knows which tool a row is. */
export const lastingColumns: readonly ColumnName[] = ['code', 'tool']

/** @param chosen as the settings keep them. @returns the columns to be shown, in their order */
export const columnsOf = (chosen: string): readonly ColumnName[] => {
  const wanted = chosen.split(',')
  return names.filter((name) =>
    chosen === '' ? allColumns[name].usual : lastingColumns.includes(name) || wanted.includes(name),
  )
}

/** @returns the choice with one column put in or left out, as the settings keep it */
export const withColumn = (chosen: string, name: ColumnName, shown: boolean): string =>
  names.filter((each) => (each === name ? shown : columnsOf(chosen).includes(each))).join(',')
