import { type Exact, scaledDigits } from './exact.ts'

/** A number at the start of a text: its exact value, its sign as typed, and where it ends; or why it is not one. */
export type NumberText =
  | { readonly ok: true; readonly exact: Exact; readonly sign: '' | '+' | '-'; readonly end: number }
  | { readonly ok: false; readonly found: string; readonly why: string; readonly instead?: string }

/** What people set between groups of three digits: space, no-break, figure, thin and thin no-break space. */
const GAP = ' \\u00a0\\u2007\\u2009\\u202f'
const BODY = new RegExp(`^[0-9.,${GAP}]*[0-9]`)
const PLAIN = /^(\d*)(?:[.,](\d+))?$/
const GROUPED = new RegExp(`^\\d{1,3}(?:[${GAP}]\\d{3})+(?:[.,]\\d+)?$`)
const GAPS = new RegExp(`[${GAP}]`, 'g')
const UNIT_ONE = new RegExp(`[${GAP}]+1$`)
const EXPONENT = /^[eE]([+\-−]?\d+)/
/** Beyond this no quantity of a car lies; it also bounds the arithmetic. */
const LARGEST_EXPONENT = 400

/**
 * Reads the number a text starts with. A comma is a decimal comma; where it could also part thousands (`1,180`) the number is refused with
 * both readings. Takes time proportional to the text.
 */
export function numberText(text: string): NumberText {
  const [, signTyped = ''] = /^([+\-−]?)/.exec(text) ?? []
  const sign = signTyped === '−' ? '-' : (signTyped as '' | '+' | '-')
  const rest = text.slice(signTyped.length)
  const run = BODY.exec(rest)?.[0]
  // In `3000 1/min` the last 1 belongs to the unit.
  const body = rest[run?.length ?? 0] === '/' ? run?.replace(UNIT_ONE, '') : run
  if (body === undefined || !/^[0-9.,]/.test(body)) return { ok: false, found: text, why: 'a number has to come first' }
  const shown = signTyped + body
  const plain = GROUPED.test(body) ? body.replace(GAPS, '') : body
  if (/^0*[1-9]\d{0,2},\d{3}$/.test(plain)) {
    const small = signTyped + plain.replace(',', '.').replace(/0+$/, ''),
      large = signTyped + plain.replace(',', '')
    return { ok: false, found: shown, why: `${shown} can be read as ${tidy(small)} or as ${large}`, instead: `${tidy(small)} or ${large}` }
  }
  const parts = PLAIN.exec(plain)
  if (!parts) return misformed(shown, plain)
  const decimals = parts[2] ?? ''
  const after = rest.slice(body.length),
    raised = EXPONENT.exec(after)
  const exponent = raised ? Number((raised[1] ?? '').replace('−', '-')) : 0
  const end = signTyped.length + body.length + (raised ? raised[0].length : 0)
  if (Math.abs(exponent) > LARGEST_EXPONENT) return { ok: false, found: text.slice(0, end), why: 'the exponent is beyond any quantity' }
  const value = scaledDigits((parts[1] ?? '') + decimals, exponent - decimals.length)
  return { ok: true, exact: sign === '-' ? { ...value, top: -value.top } : value, sign, end }
}

const tidy = (decimal: string): string => decimal.replace(/\.$/, '')

function misformed(shown: string, body: string): NumberText {
  const wrong = (why: string, instead?: string): NumberText => ({ ok: false, found: shown, why, ...(instead ? { instead } : {}) })
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(body))
    return wrong('commas do not part thousands here, a comma is a decimal comma', body.replaceAll(',', ''))
  if (/^\d{1,3}(\.\d{3})+(,\d+)?$/.test(body)) return wrong('points do not part thousands here', body.replaceAll('.', ''))
  if (/[^0-9.,]/.test(body)) return wrong('spaces part digits only in groups of three')
  return wrong('this has more than one decimal sign')
}
