import type { TFunction } from 'i18next'
import type { Problem } from '../../geometry/result.ts'

/** More reasons than these nobody reads; the rest are counted. */
const MOST_REASONS = 20
/** Names in a job file can be of any length; a line has to stay one. */
const MOST_NAME_LENGTH = 60

/** Signs that would end a line, move the cursor or turn the direction of writing. */
const unprintable = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu

/** A text of the user's own, fit to stand in a line. */
export const oneLine = (text: string): string => {
  const plain = text.replaceAll(unprintable, ' ')
  return plain.length > MOST_NAME_LENGTH ? `${plain.slice(0, MOST_NAME_LENGTH)}…` : plain
}

const printable = (params: Problem['params']): Problem['params'] =>
  Object.fromEntries(
    Object.entries(params).map(([key, value]) => [key, typeof value === 'string' ? oneLine(value) : value]),
  )

/** The field as the file spells it and, where it has one, by its name at the bench. */
const fieldName = (t: TFunction, path: string): string => {
  const name = t(`quantities:${path}.name`, { defaultValue: '' })
  return name === '' ? oneLine(path) : `${path} (${name})`
}

/** What is wrong and what to do about it, without saying where. */
export const sentenceOf = (t: TFunction, { code, params }: Pick<Problem, 'code' | 'params'>): string =>
  t(`problems:${code}`, printable(params))

const reasonLine = (t: TFunction, found: Problem): string =>
  found.path === '' ? sentenceOf(t, found) : `${fieldName(t, found.path)}: ${sentenceOf(t, found)}`

/** As many of the lines as anybody reads, and how many more there are. @param all how many there are where not all are given */
export const firstLines = (t: TFunction, given: readonly string[], all = given.length): readonly string[] => {
  const lines = given.slice(0, MOST_REASONS)
  const count = all - lines.length
  return count > 0 ? [...lines, t('command:more', { count })] : lines
}

/** One line a reason: which field, and what to do about it. */
export const reasonLines = (t: TFunction, problems: readonly Problem[]): readonly string[] =>
  firstLines(
    t,
    problems.map((problem) => reasonLine(t, problem)),
  )
