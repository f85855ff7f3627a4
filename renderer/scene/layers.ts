/** What of the drawn machine can be taken away by itself. */
export const partNames = ['wheel', 'fixture', 'bar', 'blade', 'marks', 'fingers', 'shadow'] as const
export type PartName = (typeof partNames)[number]

/** Which parts are taken away. */
export type HiddenParts = Readonly<Record<PartName, boolean>>
