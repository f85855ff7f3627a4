/** Letters as a person types them in a hurry: no capitals, no accents. */
export const folded = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
