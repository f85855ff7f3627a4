/** A colour of oxide on plain carbon steel and the temperature it stands for; other sources differ by up to 28 C. */
export interface TemperColour {
  readonly code: string
  readonly celsius: number
}

/** sizes.com, "temper colours", from 430 to 540 F by tens. */
export const temperColours: readonly TemperColour[] = [
  { code: 'veryPaleYellow', celsius: 221.1 },
  { code: 'lightYellow', celsius: 226.7 },
  { code: 'paleStraw', celsius: 232.2 },
  { code: 'straw', celsius: 237.8 },
  { code: 'deepStraw', celsius: 243.3 },
  { code: 'darkYellow', celsius: 248.9 },
  { code: 'yellowBrown', celsius: 254.4 },
  { code: 'brownYellow', celsius: 260 },
  { code: 'spottedRedBrown', celsius: 265.6 },
  { code: 'brownPurple', celsius: 271.1 },
  { code: 'lightPurple', celsius: 276.7 },
  { code: 'fullPurple', celsius: 282.2 },
]

/** Least and most tempering temperature (C) as published by steel makers and heat treaters; 52100: ASM news. */
export const temperRanges = {
  W1: [177, 343],
  O1: [177, 260],
  A2: [177, 538],
  D2: [204, 538],
  '52100': [150, 230],
  M2: [540, 595],
} as const satisfies Record<string, readonly [least: number, most: number]>

export type Steel = keyof typeof temperRanges

/** The last colour reached at a temperature; null: still bright. */
export const colourAt = (celsius: number): TemperColour | null =>
  temperColours.findLast((colour) => colour.celsius <= celsius) ?? null

/**
 * Whether a colour seen means softened steel: at or below the least tempering heat surely not, above the most surely, and
 * between them it hangs on how the maker tempered it. The time at heat is not reckoned.
 */
export const softening = (steel: Steel, celsius: number): 'safe' | 'perhapsSoftened' | 'softened' => {
  const [least, most] = temperRanges[steel]
  if (celsius <= least) return 'safe'
  return celsius > most ? 'softened' : 'perhapsSoftened'
}
