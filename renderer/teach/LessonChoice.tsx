import { useId } from 'react'
import type { LessonLine } from '../../main/contract/teaching.ts'

interface LessonChoiceProps {
  readonly lines: readonly LessonLine[]
  readonly name: string
  readonly value: string
  readonly onChange: (lessonId: string) => void
}

/** One of the lessons, by its title. */
export const LessonChoice = ({ lines, name, value, onChange }: LessonChoiceProps) => {
  const id = useId()
  return (
    <div className="entry">
      <label className="entry-name" htmlFor={id}>
        {name}
      </label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {lines.map(({ lesson }) => (
          <option key={lesson.id} value={lesson.id}>
            {lesson.title}
          </option>
        ))}
      </select>
    </div>
  )
}
