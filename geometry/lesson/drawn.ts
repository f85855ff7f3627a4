/** Shares of the width at which an edge is drawn by a learner: both corners, both halfway, the middle. */
export const drawnShares = [0, 0.25, 0.5, 0.75, 1] as const
