import { type QuantityPath, quantities } from '../../../geometry/quantities.ts'
import { type LabelSheet, labelSheets, paperNames, singleLabel } from '../../../main/contract/labelSheets.ts'
import { SelectEntry } from '../../ui/Entry.tsx'
import { FigureField } from '../../ui/FigureField.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'

interface OnWhatProps {
  readonly sheet: LabelSheet
  readonly onTake: (sheet: LabelSheet) => void
  /** Whether the sheet is one's own, its figures to be typed. */
  readonly own: boolean
  readonly onOwn: (own: boolean) => void
}

const OWN = 'own'

/** The sheet of labels: one of those commonly sold, or one's own by its figures. */
export const OnWhat = ({ sheet, onTake, own, onOwn }: OnWhatProps) => {
  const t = useTexts()
  const name = useSheetName()
  const value = own ? OWN : String(labelSheets.indexOf(sheet))
  const choose = (chosen: string) => {
    onOwn(chosen === OWN)
    const listed = labelSheets[Number(chosen)]
    if (listed) onTake(listed)
  }
  const options = [
    ...labelSheets.map((each, i) => ({ value: String(i), name: name(each) })),
    { value: OWN, name: t('labels:on.own') },
  ]
  return (
    <div className="labels-on">
      <SelectEntry name={t('labels:on.name')} value={value} options={options} onChange={choose} />
      {own ? <OwnSheet sheet={sheet} onTake={onTake} /> : <p className="muted">{t('labels:on.source')}</p>}
    </div>
  )
}

const useSheetName = () => {
  const t = useTexts()
  const figures = useFigures()
  return ({ paper, columns, rows, widthMm, heightMm }: LabelSheet): string => {
    const { decimals } = quantities.label.widthMm
    const width = figures.plain(widthMm, 'mm', decimals).text
    const height = figures.inWords(heightMm, 'mm', decimals)
    if (paper === 'single') return t('labels:on.single', { width, height })
    return t('labels:on.grid', { paper: t(`labels:paper.${paper}`), columns, rows, width, height })
  }
}

type Figure = Exclude<keyof LabelSheet, 'paper'>

/** A single label has a size and nothing more. */
const figuresOf = (sheet: LabelSheet): readonly Figure[] =>
  sheet.paper === 'single'
    ? ['widthMm', 'heightMm']
    : ['columns', 'rows', 'widthMm', 'heightMm', 'leftMm', 'topMm', 'gapAcrossMm', 'gapDownMm']

const OwnSheet = ({ sheet, onTake }: Pick<OnWhatProps, 'sheet' | 'onTake'>) => {
  const t = useTexts()
  const takePaper = (paper: LabelSheet['paper']) =>
    onTake(paper === 'single' ? singleLabel(sheet.widthMm, sheet.heightMm) : { ...sheet, paper })
  return (
    <div className="labels-own">
      <SelectEntry
        name={t('labels:on.paper')}
        value={sheet.paper}
        options={paperNames.map((value) => ({ value, name: t(`labels:paper.${value}`) }))}
        onChange={takePaper}
      />
      {figuresOf(sheet).map((key) => (
        <FigureField
          key={key}
          quantity={`label.${key}` satisfies QuantityPath}
          size="small"
          value={sheet[key]}
          onCommit={(value) => {
            if (value === null) return false
            const whole = key === 'columns' || key === 'rows' ? Math.round(value) : value
            return onTake({ ...sheet, [key]: whole })
          }}
        />
      ))}
    </div>
  )
}
