import { displayUnit, type System } from '@ampwright/conversion'
import {
  type AnyFormula,
  type Fact,
  FORMULAS,
  formulaById,
  isOne,
  KINDS,
  type Kind,
  markOf,
  type One,
  type Source,
  type Take,
  WORKS,
} from '@ampwright/engine'
import { headed, plain, shown, shownNumber } from '../shown.ts'
import { textsOf } from './figure-texts.ts'
import { columnKinds, isPlan, kindOfOne, rowExample, takesOf } from './inputs.ts'
import type { Typeset } from './math-marks.ts'
import { heldRange } from './range.ts'
import type { HandbookEntry } from './search.ts'
import { typeset } from './typeset.ts'

/** One input as a screen asks for it. */
export type TakeView = {
  readonly name: string
  readonly symbol: string
  readonly label: string
  readonly is: 'number' | 'list' | 'curve' | 'map' | 'choice'
  /** Unit the card counts in, as printed. */
  readonly unit: string
  /** How it may be typed. */
  readonly accepts: string
  readonly oneOf?: readonly string[]
  readonly holds?: string
}
export type ExampleView = {
  /** By name of the input, as somebody would type them. */
  readonly texts: Readonly<Record<string, string>>
  readonly gives: readonly { readonly symbol: string; readonly text: string }[]
  readonly within: string
  readonly source: string
  readonly because?: string
}
/** A card of the handbook as a screen lays it out. Plain data. */
export type CardView = {
  readonly id: string
  readonly chapter: string
  readonly label: string
  readonly text: string
  /** Set as mathematics: equation by equation, a long one in several lines. */
  readonly math?: readonly (readonly Typeset[])[]
  /** Why the text is words and not arithmetic. */
  readonly words?: string
  readonly gives: readonly { readonly symbol: string; readonly label: string; readonly unit: string }[]
  readonly takes: readonly TakeView[]
  readonly uses: readonly { readonly symbol: string; readonly label: string; readonly text: string }[]
  readonly source: string
  readonly leavesOut?: string
  readonly examples: readonly ExampleView[]
  /** Why there is no published example. */
  readonly noExample?: string
  /** It takes a whole plan: nobody types that. */
  readonly plan: boolean
}

/** A source as printed: work, place, and how well it was read. */
export const sourceLine = (s: Source): string => `${WORKS[s.work].title}, ${s.place}${markOf(s) ? ` (${markOf(s)})` : ''}`

const givesOf = (f: AnyFormula): readonly (readonly [string, One])[] =>
  isOne(f.card.gives) ? [['', f.card.gives]] : Object.entries(f.card.gives as Record<string, One>)
const unit = (u: string): string => (u === '1' ? '' : u)

/** Every card in the order of the chapters, with the words it is found by. */
export const handbookEntries = (): readonly HandbookEntry[] =>
  FORMULAS.map(({ chapter, formula: { card } }) => ({
    id: card.id,
    label: headed(card.label),
    chapter,
    words: [
      card.id.replaceAll('-', ' '),
      card.label,
      chapter,
      WORKS[card.source.work as keyof typeof WORKS].title,
      ...symbolsAndLabels(card),
    ]
      .join(' ')
      .toLowerCase(),
  }))
const symbolsAndLabels = (card: AnyFormula['card']): readonly string[] =>
  [
    ...Object.values(card.takes as Record<string, Take>),
    ...(isOne(card.gives) ? [card.gives] : Object.values(card.gives as Record<string, One>)),
  ].flatMap(t => [t.symbol, t.label ?? ''])

/** One card, numbers in the reader's units; undefined where there is none of that name. */
export function cardView(id: string, system: System): CardView | undefined {
  const f = formulaById(id)
  if (f === undefined) return undefined
  const { card } = f,
    math = card.words ? undefined : typeset(card.text)
  return {
    id: card.id,
    chapter: FORMULAS.find(x => x.formula === f)?.chapter ?? '',
    label: headed(card.label),
    text: card.text,
    gives: givesOf(f).map(([name, one]) => ({
      symbol: one.symbol,
      label: headed(one.label ?? (name || card.label)),
      unit: unit(one.unit),
    })),
    takes: takesOf(f).map(([name, take]) => takeView(name, take, system)),
    uses: ((card.uses ?? []) as readonly Fact[]).map(u => ({ symbol: u.symbol, label: u.label, text: shown(u, system) })),
    source: sourceLine(card.source),
    examples: 'none' in card.proof ? [] : (card.proof.examples as readonly Proved[]).map(e => exampleView(f, e, system)),
    plan: isPlan(f),
    ...(math ? { math } : {}),
    ...(card.words ? { words: card.words } : {}),
    ...(card.leavesOut === undefined ? {} : { leavesOut: card.leavesOut }),
    ...('none' in card.proof ? { noExample: card.proof.none } : {}),
  }
}

const unitText = (take: Take): string =>
  'oneOf' in take ? '' : typeof take.unit === 'string' ? unit(take.unit) : take.unit.map(u => unit(u) || '1').join(' → ')

function takeView(name: string, take: Take, system: System): TakeView {
  const holds = 'holds' in take ? heldRange(take, system) : undefined
  return {
    name,
    symbol: take.symbol,
    label: headed(take.label ?? name),
    is: 'oneOf' in take ? 'choice' : 'curve' in take ? 'curve' : 'grid' in take ? 'map' : 'many' in take ? 'list' : 'number',
    unit: unitText(take),
    accepts: accepts(take, system),
    ...('oneOf' in take ? { oneOf: take.oneOf } : {}),
    ...(holds === undefined ? {} : { holds }),
  }
}

function accepts(take: Take, system: System): string {
  if ('oneOf' in take) return take.oneOf.join(', ')
  if ('curve' in take || 'grid' in take)
    return `rows such as ${rowExample(take)}, or a CSV table with ${columnKinds(take).length} columns, units in its heading: ${take.unit.map(u => `[${u === '1' ? '%' : u}]`).join(', ')}`
  return 'many' in take ? `${oneAccepts(take, system)}; several with ; between them` : oneAccepts(take, system)
}
const SAID: Partial<Record<Kind, string>> = {
  number: 'a bare number',
  count: 'a bare number',
  ratio: 'a bare number, or two with a colon',
  share: 'in %, or a bare number',
  slope: 'in %, in °, or 1 in 8',
}
function oneAccepts(one: One, system: System): string {
  const kind = kindOfOne(one)
  return kind === undefined
    ? `a bare number in ${one.unit}`
    : (SAID[kind] ?? `in ${displayUnit(kind, system).unit} or any other unit of ${KINDS[kind].label}`)
}

type Proved = {
  readonly takes: Readonly<Record<string, unknown>>
  readonly gives: number | Readonly<Record<string, number>>
  readonly within: number
  readonly source: Source
  readonly because?: string
}
function exampleView(f: AnyFormula, e: Proved, system: System): ExampleView {
  const found = (name: string): number | undefined => (typeof e.gives === 'number' ? e.gives : e.gives[name])
  return {
    texts: textsOf(f, e.takes, system),
    gives: givesOf(f).flatMap(([name, one]) => {
      const v = found(name)
      return v === undefined ? [] : [{ symbol: one.symbol, text: shownNumber(v, kindOfOne(one), one.unit, system) }]
    }),
    within: plain(e.within),
    source: sourceLine(e.source),
    ...(e.because === undefined ? {} : { because: e.because }),
  }
}
