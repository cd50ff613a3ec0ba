/** Limits of a readable file. They bound time and memory for hostile input; a real conversion stays far below each. */
export const MAX_BYTES = 2_000_000
/** Groups within groups, whether by indentation or by brackets. */
export const MAX_DEPTH = 32
export const MAX_KEYS = 5_000
/** Values in one-line rows, all rows together. */
export const MAX_ITEMS = 20_000
/** Lexical pieces (words, blanks, marks, comments) of the whole file as the library's lexer counts them: a second wall behind this scan. */
export const MAX_PIECES = 150_000
/** Issues reported at once; how many more there are is said. */
export const MAX_ISSUES = 100
/** Words that would reach into the machinery of the language instead of naming a thing. */
export const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype'])
export const MAX_KEY_LENGTH = 100
/** Characters a key or value may not hold, not even by an escape: control characters, halves of characters, hidden line ends. */
export const HIDDEN = /(?![\t\n])[\p{Cc}\p{Cs}\u2028\u2029\ufeff]/u
