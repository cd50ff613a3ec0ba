import { nearest, type System } from '@ampwright/conversion'
import {
  type AnyFormula,
  dimensionFaults,
  type Fact,
  type Figure,
  FORMULAS,
  formulaById,
  isOne,
  type Line,
  markOf,
  type One,
  type Plane,
  type Take,
  WORKS,
} from '@ampwright/engine'
import {
  type InputWrong,
  isPlan,
  plain,
  Refusal,
  readInput,
  rowExample,
  shown,
  sourceLine,
  type TypedInput,
  workOn,
} from '@ampwright/workbench'
import { bytesOf } from './load.ts'
import { colours, type Terminal, wrapped } from './terminal.ts'

export function printChapters(t: Terminal): void {
  const k = colours(t)
  let chapter = ''
  for (const { chapter: c, formula } of FORMULAS) {
    if (c !== chapter) {
      chapter = c
      t.out('')
      t.out(k.bold(c))
    }
    for (const line of wrapped(`${formula.card.id}  ${formula.card.label}`, t.width, '  ')) t.out(line)
  }
}

const givesOf = (f: AnyFormula): readonly One[] =>
  isOne(f.card.gives) ? [f.card.gives] : Object.values(f.card.gives as Record<string, One>)

export function printCard(f: AnyFormula, t: Terminal, system: System): void {
  const k = colours(t),
    { card } = f
  t.out(k.bold(card.label))
  t.out('')
  for (const line of (card.words ?? card.text).split('\n')) t.out(`  ${line}`)
  t.out('')
  for (const one of givesOf(f)) t.out(`  ${one.symbol} [${one.unit}]  ${one.label ?? card.label}`)
  for (const [name, take] of Object.entries(card.takes) as [string, Take][])
    t.out(
      `  ${take.symbol} [${unitOf(take)}]  ${take.label ?? name}${'holds' in take && take.holds ? `, ${plain(take.holds[0])} … ${plain(take.holds[1])}` : ''}  (--input ${name}=${'curve' in take || 'grid' in take ? '@FILE.csv' : '…'})`,
    )
  if (isPlan(f)) for (const line of wrapped(`  ${PLAN}`, t.width, '  ')) t.out(line)
  for (const used of (card.uses ?? []) as Fact[]) t.out(`  ${used.symbol} = ${shown(used, system)}  ${used.label}`)
  t.out('')
  for (const line of wrapped(`Source: ${sourceLine(card.source)}`, t.width, '  ')) t.out(line)
  if (card.leavesOut) for (const line of wrapped(`Leaves out: ${card.leavesOut}`, t.width, '  ')) t.out(line)
  if ('none' in card.proof) for (const line of wrapped(`No published example: ${card.proof.none}`, t.width, '  ')) t.out(line)
  else
    for (const e of card.proof.examples)
      for (const line of wrapped(
        `Example: ${JSON.stringify(e.takes)} gives ${JSON.stringify(e.gives)} within ${e.within} (${sourceLine(e.source)})`,
        t.width,
        '  ',
      ))
        t.out(line)
}
const unitOf = (take: Take): string =>
  'oneOf' in take
    ? take.oneOf.join(' | ')
    : typeof take.unit === 'string'
      ? `${take.unit}${'many' in take ? ', list' : ''}`
      : take.unit.join(' → ')

export function formulaNamed(id: string): AnyFormula {
  const f = formulaById(id)
  if (f) return f
  const near = nearest(
    id,
    FORMULAS.map(x => x.formula.card.id),
  )
  throw new Refusal(`handbook: «${id}» is no formula${near ? `; did you mean ${near}?` : '.'} \`ampwright handbook\` lists them all.`)
}

/** Typed inputs as values: any unit of the right kind, lists between semicolons, curves and maps from a file or in rows. */
function inputsOf(f: AnyFormula, given: readonly string[]): Record<string, TypedInput> {
  const takes = f.card.takes as Record<string, Take>,
    out: Record<string, TypedInput> = {}
  for (const text of given) {
    const at = text.indexOf('='),
      name = text.slice(0, at),
      take = takes[name]
    if (at < 1 || !take)
      throw new Refusal(`handbook: --input ${text}: NAME=VALUE is wanted, with NAME one of ${Object.keys(takes).join(', ')}`)
    out[name] = inputOf(name, take, text.slice(at + 1))
  }
  const missing = Object.keys(takes).filter(name => !(name in out))
  if (missing.length)
    throw new Refusal(`handbook: ${f.card.id} also needs ${missing.map(m => `--input ${m}=…`).join(' ')}${isPlan(f) ? `\n${PLAN}` : ''}`)
  return out
}
/** Runs a formula on typed inputs. What it has no result for is refused in its own words: a list of another length, a curve that never reaches. */
export function worked(f: AnyFormula, given: readonly string[]): readonly Figure[] {
  const inputs = inputsOf(f, given)
  try {
    return workOn(f, inputs)
  } catch (e) {
    if (e instanceof RangeError) throw new Refusal(`handbook: ${e.message}`)
    throw e
  }
}
function inputOf(name: string, take: Take, value: string): TypedInput {
  const fromFile = ('curve' in take || 'grid' in take) && value.startsWith('@')
  const read = readInput(name, take, value, fromFile ? bytesOf(value.slice(1), 'a CSV table') : undefined)
  if (read.ok) return read.input
  throw new Refusal(`handbook: --input ${read.wrong.at}: ${wrongText(read.wrong, name, take)}`)
}

const PLAN =
  'It takes a whole plan. `ampwright assess FILE --figures` runs it for the car of a file; `ampwright why FILE FIGURE` shows what went in.'

/** What is wrong with an input in one line, and how it may be given here. */
function wrongText({ about, found, why, accepted }: InputWrong, name: string, take: Take): string {
  if (about === 'word') return `${found} is not one of ${accepted}`
  if (about === 'number') return `${accepted} is wanted, ${found} was found`
  if (about === 'quantity') return `found ${found}, ${why}; accepted ${accepted}`
  const { unit } = take as Line | Plane,
    wanted = `--input ${name}=@FILE.csv with the columns ${unit.map(u => `[${u === '1' ? '%' : u}]`).join(', ')}, or rows such as '${rowExample(take as Line | Plane)}, …'`
  return about === 'rows' ? `found ${found}; ${wanted}` : `found ${found}; accepted ${accepted}; ${wanted}`
}

export const cardJson = (f: AnyFormula, chapter: string): object => ({
  ...f.card,
  chapter,
  source: {
    ...f.card.source,
    title: WORKS[f.card.source.work as keyof typeof WORKS].title,
    ...(markOf(f.card.source) ? { mark: markOf(f.card.source) } : {}),
  },
  unitFaults: f.card.words ? undefined : dimensionFaults(f),
})
