import { pathText, readText, type System, type TextGroup, type TextNode } from '@ampwright/conversion'
import { type Assessment, type Finding, findingId, type Outcome } from '@ampwright/engine'
import { differences, headlineIds, headlineRow, type Row, rowOf, shownRows, turned } from '../differences.ts'
import { headed, shown } from '../shown.ts'

/** Two conversions side by side, ready to print: in each part what differs first, then what is the same. Plain data. */
export type ComparisonView = {
  readonly headline: readonly FigureRow[]
  readonly findings: { readonly differ: readonly FindingRow[]; readonly same: readonly FindingRow[] }
  /** Figures that are not of the headline. */
  readonly figures: { readonly differ: readonly FigureRow[]; readonly same: readonly FigureRow[] }
  /** What the files state otherwise. */
  readonly stated: readonly StatedRow[]
}
export type FigureRow = {
  readonly id: string
  readonly label: string
  readonly before: string
  readonly after: string
  readonly change: string
  readonly differs: boolean
}
export type FindingRow = {
  readonly id: string
  readonly title: string
  readonly harm: Finding['harm']
  /** Absent where it is not asked of that car. */
  readonly before?: Outcome
  readonly after?: Outcome
}
export type StatedRow = { readonly path: string; readonly before?: string; readonly after?: string }
/** One side of a comparison: its text and what was worked out from it. */
export type Side = { readonly text: string; readonly assessment: Assessment }

/** Figures, findings and what is stated of two conversions, differences first. */
export function comparisonView(before: Side, after: Side, system: System): ComparisonView {
  const [a, b] = [before.assessment, after.assessment],
    top = headlineIds(a, b)
  const headline = top.map(id => figureRow(id, rowOf(headlineRow(id, a, b), system)))
  return {
    headline: differingFirst(headline),
    findings: { differ: turned(a, b).map(t => findingRow(t, t.before, t.after)), same: sameFindings(a, b) },
    figures: figuresOf(a, b, top, system),
    stated: statedRows(before.text, after.text),
  }
}

const figureRow = (id: string, [label, before, after, change]: Row): FigureRow => ({
  id,
  label,
  before,
  after,
  change,
  differs: before !== after,
})
const differingFirst = (rows: readonly FigureRow[]): readonly FigureRow[] => [
  ...rows.filter(r => r.differs),
  ...rows.filter(r => !r.differs),
]

function figuresOf(a: Assessment, b: Assessment, top: readonly string[], system: System): ComparisonView['figures'] {
  const others = differences(a, b).filter(d => !top.includes(d.id))
  return {
    differ: shownRows(others, system).map(({ ids, row }) => figureRow(ids[0] as string, row)),
    // What reads the same on both sides is the same to the reader, whatever moved behind the last digit.
    same: [...b.figures.values()].flatMap((f): FigureRow[] => {
      const was = a.figures.get(f.id)
      if (was === undefined || typeof f.value !== 'number' || typeof was.value !== 'number' || top.includes(f.id)) return []
      const text = shown(f, system)
      return text === shown(was, system) ? [figureRow(f.id, [headed(f.label), text, text, ''])] : []
    }),
  }
}

const findingRow = (
  f: Pick<Finding, 'rule' | 'item' | 'title' | 'harm'>,
  before: Outcome | undefined,
  after: Outcome | undefined,
): FindingRow => ({
  id: findingId(f),
  title: f.item === undefined ? f.title : `${f.title} (${f.item})`,
  harm: f.harm,
  ...(before === undefined ? {} : { before }),
  ...(after === undefined ? {} : { after }),
})

function sameFindings(a: Assessment, b: Assessment): readonly FindingRow[] {
  const before = new Map(a.findings.map(f => [findingId(f), f.outcome]))
  return b.findings.filter(f => before.get(findingId(f)) === f.outcome).map(f => findingRow(f, f.outcome, f.outcome))
}

/** Values that stand in one file and not, or otherwise, in the other: in the order of the second, what only the first has last. */
function statedRows(before: string, after: string): readonly StatedRow[] {
  const a = valuesOf(before),
    b = valuesOf(after)
  return [...new Set([...b.keys(), ...a.keys()])].flatMap((path): StatedRow[] => {
    const was = a.get(path),
      is = b.get(path)
    return was === is ? [] : [{ path, ...(was === undefined ? {} : { before: was }), ...(is === undefined ? {} : { after: is }) }]
  })
}

function valuesOf(text: string): ReadonlyMap<string, string> {
  const out = new Map<string, string>(),
    { tree } = readText(text)
  const walk = (node: TextNode, path: readonly string[]): void => {
    if (node.kind === 'group') for (const [key, e] of node.entries) walk(e.node, [...path, key])
    else if (!isEmpty(node)) out.set(pathText(path), wordsOf(node))
  }
  if (tree) walk(tree, [])
  return out
}
type Leaf = Exclude<TextNode, TextGroup>
const isEmpty = (node: Leaf): boolean => node.kind === 'value' && node.source === '' && !node.quoted
const wordsOf = (node: Leaf): string =>
  node.kind === 'value' ? node.source : node.kind === 'note' ? node.text : node.items.map(i => i.source).join(', ')
