import { displayUnit, type Issue, type Leaf, pathText, type System, type TextNode } from '@ampwright/conversion'
import { type Fact, KINDS, type Measure, type Until } from '@ampwright/engine'
import { headed, shown } from '../shown.ts'

/** One field of the file as a screen shows it: plain data, texts ready to print. */
export type FieldView = {
  readonly path: string
  readonly key: string
  readonly label: string
  readonly is: Leaf['is']
  readonly says?: string
  /** As typed in the file, origin and all; absent where nothing is typed. */
  readonly text?: string
  /** What stands without being typed: filled by a part, or assumed from a class table. */
  readonly stands?: string
  /** What to type to keep what stands. */
  readonly taking?: string
  readonly how?: 'measured' | 'datasheet' | 'standard' | 'assumed'
  readonly note?: string
  /** Words to choose from. */
  readonly oneOf?: readonly string[]
  /** An example of what is accepted. */
  readonly example?: string
  readonly until?: Until
  readonly measure?: Measure
  /** Questions that wait for it. */
  readonly unlocks: readonly string[]
  readonly issue?: Pick<Issue, 'what' | 'found' | 'accepted' | 'nearest'>
}

/** What a field view is made from, by path of the file. */
export type Known = {
  readonly facts: ReadonlyMap<string, Fact>
  readonly unlocks: ReadonlyMap<string, readonly string[]>
  readonly issues: ReadonlyMap<string, Issue>
  readonly names: (mapPath: string) => readonly string[]
  readonly parts: (classes: readonly string[]) => readonly string[]
  readonly files: readonly string[]
  readonly system: System
}

/** A leaf of the schema at a path, with what the text says there. */
export function fieldView(leaf: Leaf, path: readonly string[], node: TextNode | undefined, k: Known): FieldView {
  const at = pathText(path),
    fact = k.facts.get(at),
    typed = node?.kind === 'value' && (node.source !== '' || node.quoted) ? node.source : undefined,
    issue = k.issues.get(at),
    oneOf = choices(leaf, k)
  return {
    path: at,
    key: path.at(-1) as string,
    label: headed(leaf.label),
    is: leaf.is,
    unlocks: k.unlocks.get(at) ?? [],
    ...(leaf.says === undefined ? {} : { says: leaf.says }),
    ...(typed === undefined ? (fact === undefined ? {} : stands(fact, k.system)) : { text: typed }),
    ...(fact?.origin ? { how: fact.origin.how, ...(fact.origin.note === undefined ? {} : { note: fact.origin.note }) } : {}),
    ...(oneOf === undefined ? {} : { oneOf }),
    ...(leaf.is === 'quantity' ? { example: example(leaf.kind, k.system) } : {}),
    ...(leaf.until === undefined ? {} : { until: leaf.until }),
    ...(leaf.measure === undefined ? {} : { measure: leaf.measure }),
    ...(issue === undefined
      ? {}
      : {
          issue: {
            what: issue.what,
            found: issue.found,
            accepted: issue.accepted,
            ...(issue.nearest === undefined ? {} : { nearest: issue.nearest }),
          },
        }),
  }
}

/** An assumed value that is taken stays visibly assumed: its origin goes into the file with it. */
const stands = (fact: Fact, system: System): Pick<FieldView, 'stands' | 'taking'> => ({
  stands: shown(fact, system, fact.half),
  ...(typeof fact.value === 'number'
    ? { taking: takingText(fact) }
    : typeof fact.value === 'string'
      ? { taking: fact.value as string }
      : {}),
})
function takingText(fact: Fact): string {
  const text = fact.text ?? shown(fact, 'metric', fact.half).replaceAll('\u202f', ' ').replaceAll('−', '-'),
    bare = text.replace(/\s*\([^()]*\)\s*$/, '')
  const { how, note } = fact.origin ?? {}
  return how === undefined ? bare : `${bare} (${how}${note === undefined ? '' : `, ${note.replaceAll(/[()]/g, '')}`})`
}

function choices(leaf: Leaf, k: Known): readonly string[] | undefined {
  if (leaf.is === 'choice') return leaf.oneOf
  if (leaf.is === 'reference') return leaf.to.flatMap(k.names)
  if (leaf.is === 'part') return k.parts(leaf.classes)
  if (leaf.is === 'file') return k.files
  return undefined
}

/** What kind of value, and the unit of the reader's trade for it; any unit of the kind is taken. */
function example(kind: keyof typeof KINDS, system: System): string {
  const { label, unit } = KINDS[kind],
    trade = displayUnit(kind, system).unit
  return `${label}, ${unit === '1' && trade === '' ? 'a bare number' : trade}`
}
