/** A piece of set mathematics: the name of a MathML element, its attributes, and what is inside. */
export type Typeset = { readonly tag: Tag; readonly with?: Readonly<Record<string, string>>; readonly of: readonly (Typeset | string)[] }
export type Tag = 'mrow' | 'mi' | 'mn' | 'mo' | 'mtext' | 'mfrac' | 'msup' | 'msub' | 'msqrt' | 'mtable' | 'mtr' | 'mtd'

export const set = (tag: Tag, ...of: readonly (Typeset | string)[]): Typeset => ({ tag, of })
export const row = (...of: readonly Typeset[]): Typeset => (of.length === 1 ? (of[0] as Typeset) : set('mrow', ...of))
/** A name of several letters that is no symbol: exp, min. It stands upright. */
export const upright = (text: string): Typeset => ({ tag: 'mi', with: { mathvariant: 'normal' }, of: [text] })
export const mi = (text: string): Typeset => set('mi', text)
export const mn = (text: string): Typeset => set('mn', text)
export const mo = (text: string): Typeset => set('mo', text)
/** A sign at the head of a line that stands between two things all the same. */
export const between = (sign: string): Typeset => ({ tag: 'mo', with: { form: 'infix' }, of: [sign] })
export const parens = (inside: Typeset): Typeset => set('mrow', mo('('), inside, mo(')'))
/** The brace before cases: it is for reading aloud, the eye gets a line as high as the cases. */
export const brace: Typeset = { tag: 'mo', with: { stretchy: 'false', class: 'brace' }, of: ['{'] }

/** A symbol with its index below: `m_R0′` is m with R0′. */
export function symbolSet(name: string): Typeset {
  const [base = '', index] = name.split(/_(.*)/s)
  return index === undefined ? mi(base) : set('msub', mi(base), { tag: 'mtext', of: [index] })
}
