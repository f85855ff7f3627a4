/** @returns a UTC time as a short local date, for example `24 Nov`; the year only where it is not this one */
export const shortDate = (utc: string, now: Date = new Date()): string => {
  const date = new Date(utc)
  const year = date.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' as const }
  return date.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', ...year })
}
