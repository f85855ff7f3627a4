/** The address, within the page, of what a class is shown: the one that may have a window of its own. */
export const CLASS_HASH = '#teach//class'
