/** How a value can be known, in the words of the file. */
export const HOW = ['measured', 'datasheet', 'standard', 'assumed'] as const
const ORIGIN = /^(.*\S)\s*\(\s*(measured|datasheet|standard|assumed)\b\s*,?\s*([^()]*)\)\s*$/

/** A typed quantity as its value and how it is known: `250 Nm (datasheet)` is both in one text. */
export function parted(text: string): { readonly value: string; readonly how?: string; readonly note?: string } {
  const [, value, how, note] = ORIGIN.exec(text) ?? []
  return value === undefined ? { value: text } : { value, how: how as string, ...(note ? { note } : {}) }
}
/** The text of both again. */
export const joined = (value: string, how: string | undefined, note: string | undefined): string =>
  how === undefined || how === '' ? value : `${value} (${how}${note ? `, ${note}` : ''})`
