/**
 * What the program may weigh and do, in one place: what was found when the line was written, and a tenth more, of memory a third.
 * Sizes and counts alone: they are the same on every machine, where times are not (`npm run bench` compares those).
 */
export const budgets = {
  /** Scripts read before the first picture (kB). */
  firstScriptsKb: 660,
  /** All scripts of the page, most of them read when their screen is opened (kB). */
  pageScriptsKb: 3_170,
  /** The data’s side as built: host, service worker, maker, and 212 of German words, read where German is spoken (kB). */
  mainKb: 850,
  /** The packed archive without the driver's binary, which lies beside it (kB). */
  packedKb: 12_000,
  /** Calls a picture of the moving model may take. */
  drawCalls: 150,
  /**
   * What drawing a picture of the playing model makes (kB), found at 28: numbers that three hands on and matrices it inverts. Lists,
   * pairs, functions or text made with every picture for lines and handles would come on top.
   */
  madeAPictureKb: 40,
  /** Heap of the page after a collection, on the demo workshop: on the Rack, and with the moving model open (MB). */
  rackHeapMb: 8,
  modelHeapMb: 16,
  /** Memory of the loopback host with its workers, on the demo workshop as it comes (MB). */
  hostMb: 240,
} as const
