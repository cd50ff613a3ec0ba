/** The tokens of the screen; the fallbacks are those of white paper. Orange is not among them: it is kept for high voltage. */
const INKS = {
  sheet: '#fcfdfc',
  ink: '#1d2529',
  quiet: '#55636b',
  line: '#ccd4d1',
  hair: '#e2e8e5',
  act: '#0f5f74',
  sound: '#2f6b3c',
  marginal: '#8a6100',
  failing: '#a3262a',
  unknown: '#5b6670',
} as const
export type Ink = keyof typeof INKS

const FACES = {
  text: '"Atkinson Hyperlegible Next Variable", "Atkinson Hyperlegible Next"',
  num: '"Atkinson Hyperlegible Mono Variable", "Atkinson Hyperlegible Mono"',
} as const
export type Face = keyof typeof FACES
/** On a page what the system has; in a file of its own, which may be opened without ours, faces no wider than ours first. */
const ELSE = { text: 'system-ui, sans-serif', num: 'ui-monospace, monospace' } as const
const ALONE = { text: '"Liberation Sans", Arial, Helvetica, sans-serif', num: 'ui-monospace, "Liberation Mono", monospace' } as const

/** How colours and typefaces are written: as custom properties the screen's theme sets, or plainly for a file of its own. */
export type Hand = { readonly ink: (name: Ink) => string; readonly face: (name: Face) => string }
export const handOf = (standalone: boolean | undefined): Hand => ({
  ink: name => (standalone ? INKS[name] : `var(--${name}, ${INKS[name]})`),
  face: name => (standalone ? `${FACES[name]}, ${ALONE[name]}` : `var(--${name}, ${FACES[name]}, ${ELSE[name]})`),
})
