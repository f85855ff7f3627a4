/** @returns the day of a moment by this machine's own calendar, as `YYYY-MM-DD` */
export const localDay = (at: Date): string => {
  const two = (number: number): string => String(number).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
}
