import type { FigureName } from './figureNames.ts'
import { groundFigures } from './groundFigures.ts'
import type { Find } from './scene.ts'
import { setUpFigures } from './setUpFigures.ts'
import { wantedFigures } from './wantedFigures.ts'

/** How each figure is found. */
export const findFigure: Readonly<Record<FigureName, Find>> = { ...setUpFigures, ...groundFigures, ...wantedFigures }
