/**
 * A view as it stands, copied so that it can be drawn without the page: every element carries the styles that the page gives
 * it. Styles are set as properties, not as text, which the page's content policy would refuse.
 */

const FONT = ['font-family', 'font-size', 'font-weight', 'font-style', 'font-variant-numeric', 'letter-spacing']
const SEEN = ['display', 'visibility', 'opacity', 'color']

/** What makes up the look of text and boxes. */
const BOX_STYLES = [
  ...FONT,
  ...SEEN,
  ...[
    'position',
    'top',
    'right',
    'bottom',
    'left',
    'z-index',
    'transform',
    'transform-origin',
    'overflow',
    'clip-path',
  ],
  ...['box-sizing', 'width', 'height', 'min-width', 'max-width', 'vertical-align'],
  ...['margin-top', 'margin-right', 'margin-bottom', 'margin-left'],
  ...['padding-top', 'padding-right', 'padding-bottom', 'padding-left'],
  ...['border-top', 'border-right', 'border-bottom', 'border-left', 'background-color'],
  ...['line-height', 'text-align', 'text-transform', 'text-decoration-line', 'text-shadow', 'white-space'],
  ...['flex-direction', 'flex-wrap', 'flex-grow', 'flex-shrink', 'flex-basis', 'row-gap', 'column-gap', 'order'],
  ...['align-items', 'align-self', 'justify-content', 'justify-items', 'list-style-type'],
  ...['grid-template-columns', 'grid-template-rows', 'grid-column-start', 'grid-column-end', 'grid-row-start'],
]

/** What makes up the look of a drawing. */
const DRAWING_STYLES = [
  ...FONT,
  ...SEEN,
  ...['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-opacity', 'stroke-dasharray', 'stroke-linecap'],
  ...['stroke-linejoin', 'paint-order', 'text-anchor', 'dominant-baseline', 'vector-effect'],
]
/** A drawing's outermost element is a box among boxes as well. */
const isBox = (element: Element): boolean => !(element instanceof SVGElement) || element instanceof SVGSVGElement

const stylesFor = (element: Element): readonly string[] =>
  element instanceof SVGSVGElement ? [...BOX_STYLES, ...DRAWING_STYLES] : isBox(element) ? BOX_STYLES : DRAWING_STYLES

/** Where a canvas stands, in CSS pixels from the view's upper left corner, and what lies behind it. */
export interface CanvasPlace {
  readonly canvas: HTMLCanvasElement
  readonly xPx: number
  readonly yPx: number
  readonly widthPx: number
  readonly heightPx: number
}

/** A ground that lies behind a canvas. */
export interface Ground extends Omit<CanvasPlace, 'canvas'> {
  readonly colour: string
}

/** A copied view: canvases and what lies behind them are drawn first, then the copy over them. */
export interface ViewCopy {
  readonly markup: string
  readonly widthPx: number
  readonly heightPx: number
  readonly grounds: readonly Ground[]
  readonly canvases: readonly CanvasPlace[]
}

const placeIn = (view: DOMRect, element: Element): Omit<CanvasPlace, 'canvas'> => {
  const { left, top, width, height } = element.getBoundingClientRect()
  return { xPx: left - view.left, yPx: top - view.top, widthPx: width, heightPx: height }
}

/** What is typed stands in a field's value, which a copy for drawing does not have: it becomes plain text. */
const asText = (input: HTMLInputElement): HTMLElement => {
  const text = document.createElement('span')
  text.textContent = input.value
  return text
}

const copyOf = (element: Element): HTMLElement | SVGElement =>
  element instanceof HTMLInputElement ? asText(element) : (element.cloneNode(false) as HTMLElement | SVGElement)

/** Keys are for the hand; on paper they keep their room and no more. Canvases are drawn by themselves. */
const isLeftBlank = (element: Element): boolean =>
  element instanceof HTMLButtonElement || element instanceof HTMLCanvasElement

interface Copying {
  readonly view: DOMRect
  readonly grounds: Ground[]
  readonly canvases: CanvasPlace[]
}

const dress = (copying: Copying, from: Element, to: HTMLElement | SVGElement): void => {
  const styles = getComputedStyle(from)
  for (const name of stylesFor(from)) to.style.setProperty(name, styles.getPropertyValue(name))
  if (from instanceof HTMLInputElement) to.style.setProperty('display', 'inline-block')
  if (isLeftBlank(from)) to.style.setProperty('visibility', 'hidden')
  if (from instanceof HTMLCanvasElement) copying.canvases.push({ canvas: from, ...placeIn(copying.view, from) })
  else if (from.querySelector('canvas') && isBox(from)) {
    copying.grounds.push({ colour: styles.backgroundColor, ...placeIn(copying.view, from) })
    to.style.setProperty('background-color', 'transparent')
  }
}

const copyDeep = (copying: Copying, from: Element): Node | null => {
  if (getComputedStyle(from).display === 'none') return null
  const to = copyOf(from)
  dress(copying, from, to)
  for (const child of from.childNodes) {
    const copied = child instanceof Element ? copyDeep(copying, child) : child.cloneNode()
    if (copied) to.append(copied)
  }
  return to
}

/** The view's own place on the page stays behind. */
const HERE: Readonly<Record<string, string>> = {
  position: 'relative',
  margin: '0',
  left: '0',
  top: '0',
  transform: 'none',
}

/** @returns a view as it stands now */
export const copyView = (element: HTMLElement): ViewCopy => {
  const view = element.getBoundingClientRect()
  const copying: Copying = { view, grounds: [], canvases: [] }
  const copied = copyDeep(copying, element)
  if (copied instanceof HTMLElement) {
    for (const [name, value] of Object.entries(HERE)) copied.style.setProperty(name, value)
  }
  return {
    markup: copied ? new XMLSerializer().serializeToString(copied) : '',
    widthPx: view.width,
    heightPx: view.height,
    grounds: copying.grounds,
    canvases: copying.canvases,
  }
}
