import { language, localeOf } from '../../main/contract/language.ts'

/** @returns a UTC time as a short local date, for example `24 Nov`; the year only where it is not this one */
export const shortDate = (utc: string, now: Date = new Date()): string => {
  const date = new Date(utc)
  const year = date.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' as const }
  return date.toLocaleDateString(localeOf[language()], { day: 'numeric', month: 'short', ...year })
}

/** @returns a UTC time as a short local date with the time of day, for example `24 Nov, 10:05` */
export const momentText = (utc: string, now: Date = new Date()): string => {
  const time = new Date(utc).toLocaleTimeString(localeOf[language()], { hour: '2-digit', minute: '2-digit' })
  return `${shortDate(utc, now)}, ${time}`
}
