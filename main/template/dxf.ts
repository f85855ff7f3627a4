import { PAGE, type Point, type ShapeItem, type TextItem } from '../cards/sheet.ts'
import type { Layer } from './layOut.ts'

/**
 * A drawing as DXF, release 12 in plain text (Autodesk, "DXF Reference": group codes by pairs of lines), which every program
 * for drawing reads. That release has no light-weight line, so outlines are POLYLINE with its VERTEXes; it names no unit
 * either, so the file says in words that one unit is one millimetre. x is to the right, y up, as such programs have it.
 */
type Group = readonly [code: number, value: string | number]

const DECIMALS = 6
/** A letter's height is what a DXF text is sized by: the cap height of the faces, as a share of the size they are set in. */
const CAP_SHARE = 0.655

/** Flags of a POLYLINE: closed, or not. */
const CLOSED = 1
const SEPARATED: Readonly<Record<string, string>> = { '×': 'x', '–': '-', '−': '-', '’': "'", '\u00a0': ' ' }

/** Release 12 knows ASCII alone: accents go, signs get their plain likeness, anything else a question mark. */
const plain = (text: string): string =>
  text
    .replace(/[×–−’\u00a0]/g, (sign) => SEPARATED[sign] as string)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^ -~]/gu, '?')

const figure = (mm: number): string => mm.toFixed(DECIMALS)

const place = (layer: string, [x, y]: Point): readonly Group[] => [
  [8, layer],
  [10, figure(x)],
  [20, figure(PAGE.heightMm - y)],
  [30, figure(0)],
]

const polyline = (layer: string, outline: readonly Point[], closed: boolean): readonly Group[] => [
  [0, 'POLYLINE'],
  [8, layer],
  [66, 1],
  [10, figure(0)],
  [20, figure(0)],
  [30, figure(0)],
  [70, closed ? CLOSED : 0],
  ...outline.flatMap((point): readonly Group[] => [[0, 'VERTEX'], ...place(layer, point)]),
  [0, 'SEQEND'],
  [8, layer],
]

const textEntity = (layer: string, { text, xMm, baselineMm, sizeMm }: TextItem): readonly Group[] => [
  [0, 'TEXT'],
  ...place(layer, [xMm, baselineMm]),
  [40, figure(sizeMm * CAP_SHARE)],
  [1, plain(text)],
]

const shapeEntities = (layer: string, { outlines, closed }: ShapeItem): readonly Group[] =>
  outlines.flatMap((outline) => polyline(layer, outline, closed))

const entities = ({ name, items }: Layer): readonly Group[] => {
  const layer = name.toUpperCase()
  return items.flatMap((item) => (item.kind === 'shape' ? shapeEntities(layer, item) : textEntity(layer, item)))
}

/** Colours by number: black or white as the ground has it, but the prediction its own. */
const COLOURS: Readonly<Record<Layer['name'], number>> = { edge: 7, predicted: 5, guides: 8, scale: 7, words: 7 }

const layerTable = (layers: readonly Layer[]): readonly Group[] => [
  [0, 'SECTION'],
  [2, 'TABLES'],
  [0, 'TABLE'],
  [2, 'LAYER'],
  [70, layers.length],
  ...layers.flatMap(({ name }): readonly Group[] => [
    [0, 'LAYER'],
    [2, name.toUpperCase()],
    [70, 0],
    [62, COLOURS[name]],
    [6, 'CONTINUOUS'],
  ]),
  [0, 'ENDTAB'],
  [0, 'ENDSEC'],
]

const header: readonly Group[] = [
  [0, 'SECTION'],
  [2, 'HEADER'],
  [9, '$ACADVER'],
  [1, 'AC1009'],
  [9, '$EXTMIN'],
  [10, figure(0)],
  [20, figure(0)],
  [9, '$EXTMAX'],
  [10, figure(PAGE.widthMm)],
  [20, figure(PAGE.heightMm)],
  [0, 'ENDSEC'],
]

/** @param title @param units both written at the file's head, where programs keep remarks */
export const writeDxf = (layers: readonly Layer[], title: string, units: string): string =>
  [
    [999, plain(title)] as Group,
    [999, plain(units)] as Group,
    ...header,
    ...layerTable(layers),
    [0, 'SECTION'] as Group,
    [2, 'ENTITIES'] as Group,
    ...layers.flatMap(entities),
    [0, 'ENDSEC'] as Group,
    [0, 'EOF'] as Group,
  ]
    .map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`)
    .join('')
