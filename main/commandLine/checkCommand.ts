import type { TFunction } from 'i18next'
import { problem } from '../../geometry/result.ts'
import { type Checked, checkFile } from './checkFile.ts'
import { type CommandEnd, exitCodes, inJson, refusedFor } from './commandEnd.ts'
import { readArgs, STANDARD } from './readArgs.ts'
import { oneLine } from './reasonLines.ts'

const USAGE = 'checkUsage'

const linesOf = ({ file, reasons }: Checked): readonly string[] =>
  reasons.map((reason) => `${oneLine(file)}: ${reason}\n`)

/** Tells of each file what it is and whether it can be used; all are looked at, whatever the first ones are. */
export const runCheck = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const read = readArgs(args, {}, USAGE)
  const files = read.ok ? read.value.positionals : []
  if (files.length === 0 || files.some((file) => file === '' || file === STANDARD))
    return refusedFor(t, [problem(USAGE)])
  const checked: Checked[] = []
  for (const file of files) checked.push(await checkFile(t, file))
  const isSound = checked.every(({ reasons }) => reasons.length === 0)
  return {
    exitCode: isSound ? exitCodes.done : exitCodes.refused,
    output: `${inJson(checked)}\n`,
    errors: checked.flatMap(linesOf).join(''),
  }
}
