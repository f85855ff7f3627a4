/** Words that must come back as they went in, whatever they say to a page, a table, a script or the database. */
export const keptWords = [
  '<script>alert(1)</script><img src=x onerror=alert(1)>',
  '"><svg/onload=alert(1)>',
  '\u202eright to left\u202c \u2067\u05d0\u2069',
  '\u05e9\u05dc\u05d5\u05dd 7 \u0645\u0631\u062d\u0628\u0627',
  'Zo\u0308e \u{1f528}\u{1f468}\u200d\u{1f3ed}',
  'a\u2028b\u0085c\u200bd\ufeffe\ufffdf',
  "'; DROP TABLE tool; --",
  '=HYPERLINK("x") +1 -1 @a',
  '+1',
  '-1;2,3',
  '@x',
  "'=1",
  "''",
  '"a""b',
  '{{name}} $t(common:close) %s',
  '../../etc/passwd\\..\\x',
  '__proto__',
]

/** Words that no field takes: no text, or so much that nobody typed it. */
export const refusedWords = {
  'half a character': 'a\ud800b',
  'the other half': '\udc00',
  nul: 'a\u0000b',
  'a control character': 'a\u001b[31mb',
  'a deleted one': 'a\u007fb',
  'far too much': 'n'.repeat(40_000),
}

/** Too much for nearly every field; those that take it keep all of it. */
export const LONG_WORDS = 'n'.repeat(10_000)
