import { findNodeAtLocation, type Node, parseTree } from 'jsonc-parser'
import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { parseLessonText } from '../../geometry/lesson/parseLesson.ts'
import { failed, type Problem, type Result } from '../../geometry/result.ts'

/** Line (from 1) of an offset in a text. */
const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length

/** A change stands under its dotted place, which a state's own problems tell as a path of the job. */
const CHANGE = /^(steps\.\d+\.set|cases\.\w+)\.(?:job\.)?(.+)$/

const asWritten = (path: string): readonly string[] => {
  const [, head, place] = CHANGE.exec(path) ?? []
  return head === undefined || place === undefined ? path.split('.') : [...head.split('.'), place]
}

/** The deepest node of the path that stands in the text. */
const nodeOf = (root: Node, path: string): Node => {
  const parts = asWritten(path).map((part) => (/^\d+$/.test(part) ? Number(part) : part))
  for (let depth = parts.length; depth > 0; depth--) {
    const node = findNodeAtLocation(root, parts.slice(0, depth))
    if (node) return node
  }
  return root
}

const withLine =
  (text: string, root: Node | undefined) =>
  (found: Problem): Problem => {
    if (found.code === 'notJson') {
      const [, line] = /line (\d+)/.exec(String(found.params.detail)) ?? []
      return { ...found, params: { ...found.params, line: Number(line ?? 1) } }
    }
    const node = root && nodeOf(root, found.path)
    return { ...found, params: { ...found.params, line: node ? lineAt(text, node.offset) : 1 } }
  }

/** A lesson file's door: each problem carries the line (from 1) that it stands in. */
export const checkLessonText = (text: string): Result<Lesson> => {
  const parsed = parseLessonText(text)
  if (parsed.ok) return parsed
  const root = parseTree(text)
  return failed(...parsed.problems.map(withLine(text, root)))
}
