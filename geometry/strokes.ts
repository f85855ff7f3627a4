import { type Profile, profileOf } from './profile.ts'

/** Strokes on a flat stone, pressed at five places: each corner, each halfway, the middle; left and right alike. */
export interface Strokes {
  readonly corner: number
  readonly halfway: number
  readonly middle: number
}

/** Common practice: corners 4 to 6, halfway 2 to 3, middle 1 to 2. */
export const usualStrokes: Strokes = { corner: 5, halfway: 3, middle: 2 }
/** What a hand does that thinks of nothing. */
export const middleOnly = (strokes: Strokes): Strokes => ({ corner: 0, halfway: 0, middle: countOf(strokes) })

/** @returns strokes in all */
export const countOf = ({ corner, halfway, middle }: Strokes): number => 2 * corner + 2 * halfway + middle

/**
 * How far out a hand brings the pressure that leans on corner, halfway or middle, as shares of half the width: both hands hold
 * the iron, so never to the corner itself. Chosen, with the softness, so that the strokes of common practice keep a
 * curve within a tenth where KEEPS says; nobody has measured either.
 */
const PLACES = { corner: 0.56, halfway: 0.28, middle: 0 } as const
/** The least curve, and the most set-back of one honing, for which the strokes of common practice keep the relief within a tenth. */
export const KEEPS = { leastReliefMm: 0.05, mostSetBackMm: 0.02 } as const
/** How far stone, slurry and hand give way under a stroke, as a mean depth over the width (mm). */
const SOFTNESS_MM = 0.05
/** Halvings that bring tilt and depth below a nanometre. */
const HALVINGS = 30

/** Depth of the stone at each point, for an iron pressed in by d and tilted by so much. */
const pressed = ({ uMm, behindMm }: Profile, depthMm: number, tilt: number): number[] =>
  uMm.map((u, i) => Math.max(0, depthMm + tilt * u - (behindMm[i] as number)))

/** Sum over the width by the trapezium rule. */
const sumOf = (uMm: readonly number[], values: readonly number[]): number => {
  let sum = 0
  for (let i = 1; i < uMm.length; i++)
    sum += (((uMm[i] as number) - (uMm[i - 1] as number)) * ((values[i] as number) + (values[i - 1] as number))) / 2
  return sum
}

const halved = (from: number, to: number, isTooMuch: (value: number) => boolean): number => {
  let [low, high] = [from, to]
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2
    if (isTooMuch(middle)) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/**
 * Where the stone presses with the load at a place: a bed that gives way in proportion, force and moment balanced, as the wheel's
 * is in the grind (Winkler). The load is the softness times the width.
 */
const strokeAt = (profile: Profile, placeShare: number): number[] => {
  const { uMm, behindMm } = profile
  const half = uMm.at(-1) as number
  const load = SOFTNESS_MM * 2 * half
  const deepest = Math.max(...behindMm) + 8 * SOFTNESS_MM
  const depthFor = (tilt: number) =>
    halved(
      -deepest - Math.abs(tilt) * half,
      deepest + Math.abs(tilt) * half,
      (depth) => sumOf(uMm, pressed(profile, depth, tilt)) > load,
    )
  const momentOf = (tilt: number) => {
    const depths = pressed(profile, depthFor(tilt), tilt)
    return sumOf(
      uMm,
      depths.map((depth, i) => depth * (uMm[i] as number)),
    )
  }
  const steepest = (4 * deepest) / half
  const wanted = load * placeShare * half
  const tilt = placeShare === 0 && isEven(profile) ? 0 : halved(-steepest, steepest, (each) => momentOf(each) > wanted)
  return pressed(profile, depthFor(tilt), tilt)
}

const isEven = ({ behindMm }: Profile): boolean => behindMm.every((v, i) => v === behindMm[behindMm.length - 1 - i])

/** Strokes as they are made: round by round, each round from the corners in. */
const roundsOf = (strokes: Strokes): readonly (keyof Strokes)[] => {
  const most = Math.max(strokes.corner, strokes.halfway, strokes.middle)
  return Array.from({ length: most }, (_, k) =>
    (['corner', 'halfway', 'middle'] as const).filter((place) => k < strokes[place]),
  ).flat()
}

/** An edge after honing, and how far its foremost point went back. */
export interface Honed {
  readonly profile: Profile
  readonly setBackMm: number
}

/**
 * Hones an edge: every stroke takes the same steel, shared out as the stone presses; the pair left and right is one. What the
 * hand's rocking, a hollow stone and the burr do is left out.
 * @param meanSetBackMm how far all strokes together set the edge back, as a mean over the width
 */
export const hone = (edge: Profile, strokes: Strokes, meanSetBackMm: number): Honed => {
  const count = countOf(strokes)
  const width = (edge.uMm.at(-1) as number) - (edge.uMm[0] as number)
  let vMm = [...edge.behindMm]
  if (count === 0) return { profile: edge, setBackMm: 0 }
  const perStroke = (meanSetBackMm * width) / count
  for (const place of roundsOf(strokes)) {
    const profile = profileOf(edge.uMm, vMm)
    const sides = PLACES[place] === 0 ? [0] : [-PLACES[place], PLACES[place]]
    const losses = sides.map((share) => strokeAt(profile, share))
    vMm = vMm.map((v, i) =>
      losses.reduce((sum, depths) => sum + (perStroke * (depths[i] as number)) / sumOf(edge.uMm, depths), v),
    )
  }
  const foremost = Math.min(...vMm)
  return { profile: profileOf(edge.uMm, vMm), setBackMm: foremost - Math.min(...edge.behindMm) }
}
