/** Size of text that layouts in pixels are made for (px). */
const MADE_FOR_PX = 16

/** How many times larger than that the user reads text, whether by the window's settings or by the system's; 1 as it comes. */
export const textScale = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / MADE_FOR_PX
