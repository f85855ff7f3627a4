import { useState } from 'react'
import { quantities } from '../../../geometry/quantities.ts'
import type { Problem } from '../../../geometry/result.ts'
import { handOverBytes } from '../../app/handOver.ts'
import { useApp } from '../../app/store.ts'
import { SelectEntry } from '../../ui/Entry.tsx'
import { FigureField } from '../../ui/FigureField.tsx'
import { Options } from '../../ui/Options.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { OutPart } from './OutPart.tsx'
import { pictureSize, pngOf } from './picture.ts'
import { fileName, type Pictured } from './pictured.ts'

/** Sizes against the screen, or a width of one's own. */
const sizes = ['screen', 'twice', 'thrice', 'width'] as const
type Size = (typeof sizes)[number]
const times: Readonly<Record<Exclude<Size, 'width'>, number>> = { screen: 1, twice: 2, thrice: 3 }

/** Width of a picture in pixels; on the screen a CSS pixel may be more than one. */
const widthOf = (size: Size, ownPx: number, element: HTMLElement): number =>
  size === 'width' ? ownPx : Math.round(pictureSize(element).widthPx * devicePixelRatio * times[size])

interface PicturePartProps {
  readonly pictured: readonly Pictured[]
  readonly view: Pictured | undefined
  readonly onView: (name: string) => void
}

/** A view as it stands, as a PNG. */
export const PicturePart = ({ pictured, view, onView }: PicturePartProps) => {
  const t = useTexts()
  const code = useApp((app) => app.tool?.code ?? '')
  const [size, setSize] = useState<Size>('screen')
  const [ownPx, setOwnPx] = useState(quantities.out.pictureWidthPx.defaultValue as number)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const save = async () => {
    if (!view) return
    setBusy(true)
    const png = await pngOf(view.element, widthOf(size, ownPx, view.element))
    setBusy(false)
    setProblems(png.ok ? [] : png.problems)
    if (!png.ok) return
    handOverBytes(png.value, 'image/png', fileName([code, view.name], 'png'), 'out:handedOver')
  }
  return (
    <OutPart heading={t('out:picture.heading')} sentence={t('out:picture.sentence')} problems={problems}>
      <SelectEntry
        name={t('out:view')}
        value={view?.name ?? ''}
        options={pictured.map(({ name }) => ({ value: name, name }))}
        onChange={onView}
      />
      <Options
        legend={t('out:picture.size')}
        options={sizes.map((value) => ({ value, name: t(`out:picture.sizes.${value}`) }))}
        value={size}
        onChoose={setSize}
      />
      <div className="out-keys">
        {size === 'width' && (
          <FigureField
            quantity="out.pictureWidthPx"
            value={ownPx}
            onCommit={(value) => value !== null && setOwnPx(value)}
          />
        )}
        <button type="button" className="key" disabled={busy || !view} onClick={() => void save()}>
          {t('out:picture.save')}
        </button>
      </div>
    </OutPart>
  )
}
