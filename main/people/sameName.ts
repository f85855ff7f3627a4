/** A name as it is compared: whatever its capitals, and however its accents are written down. */
export const alike = (name: string): string => name.normalize('NFC').trim().toLowerCase()

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/**
 * Looks for a name in running words, where it stands as words of its own: "Ann" is not found in "annealed".
 *
 * @returns every place of it, to be counted or replaced
 */
export const nameInWords = (name: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])${escaped(name.normalize('NFC').trim())}(?![\\p{L}\\p{N}])`, 'giu')
