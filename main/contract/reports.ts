import { z } from 'zod'

/** How the file of a report is called: the moment it was written. */
export const REPORT_NAME = /^\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}-\d{3}Z\.txt$/

const name = z.string().regex(REPORT_NAME)

/** A report of a fault, as it would be shared: what is shown is all there is. */
export const faultReportSchema = z.strictObject({ name, text: z.string() })
export type FaultReport = z.output<typeof faultReportSchema>

export const reportNameSchema = z.strictObject({ name })

/** A fault that the page met. */
export const pageFaultSchema = z.strictObject({
  name: z.string().max(60),
  message: z.string().max(2000),
  stack: z.string().max(20_000),
})
export type PageFault = z.output<typeof pageFaultSchema>
