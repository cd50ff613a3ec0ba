import { fieldAt, type System, writeQuantity } from '@ampwright/conversion'
import { type Fact, type Figure, kindOf, type SpreadMemo, widest } from '@ampwright/engine'
import { halfByTool } from './tool-accuracy.ts'

/** What a band is of: the three a plan stands or falls by. */
export type Banded = 'range' | 'mass' | 'cost'
const BANDED: Readonly<Record<Banded, RegExp>> = { range: /^range\.range@/, mass: /^ledger\.kerb$/, cost: /^cost\.parts$/ }
export const BANDS = Object.keys(BANDED) as readonly Banded[]

/** How much of the band of a figure one value makes up, and what is left of the band once it is measured as well as its tool can. */
export type Narrowing = {
  readonly of: Banded
  /** Id of the figure, and what it is called. */
  readonly figure: string
  readonly label: string
  /** Share of the value in the square of the band. */
  readonly share: number
  /** The band as it is, ± with unit; and as it would be, where the tool states its accuracy as a number. */
  readonly now: string
  readonly left?: string
  /** Share of the band that would go; as far as it could go where the tool states no number. */
  readonly by: number
}

/** Shares below this are not worth a line. */
const LEAST = 0.02

/**
 * By path of a fact: how much narrower range, mass and cost become when it is measured as well as its tool states. First order, everything else as it
 * is: the best value may move as well. Of several ranges the one it widens most counts.
 */
export function narrowings(
  headline: readonly Figure[],
  facts: ReadonlyMap<string, Fact>,
  system: System,
  memo: SpreadMemo = new Map(),
): ReadonlyMap<string, readonly Narrowing[]> {
  const out = new Map<string, Narrowing[]>()
  for (const of of BANDS)
    for (const figure of headline.filter(f => BANDED[of].test(f.id)))
      for (const [path, narrowing] of ofFigure(of, figure, facts, system, memo)) {
        const all = out.get(path) ?? [],
          before = all.find(n => n.of === of)
        if (before === undefined) out.set(path, [...all, narrowing])
        else if (narrowing.share > before.share)
          out.set(
            path,
            all.map(n => (n === before ? narrowing : n)),
          )
      }
  return out
}

function ofFigure(
  of: Banded,
  figure: Figure,
  facts: ReadonlyMap<string, Fact>,
  system: System,
  memo: SpreadMemo,
): readonly (readonly [string, Narrowing])[] {
  const parts = widest(figure, memo),
    all = Math.hypot(...parts.map(p => p.half))
  if (!(all > 0) || !Number.isFinite(all) || !Number.isFinite(figure.value)) return []
  const band = (half: number): string => bandText(figure, half, system)
  return parts.flatMap(({ path, half }) => {
    const share = (half / all) ** 2,
      fact = facts.get(path)
    if (share < LEAST || fact === undefined) return []
    const kept = keptByTool(fact),
      left = kept === undefined ? undefined : Math.sqrt(Math.max(0, all ** 2 - half ** 2 * (1 - kept ** 2)))
    const about = { of, figure: figure.id, label: figure.label, share, now: band(all) }
    return [[path, left === undefined ? { ...about, by: 1 - Math.sqrt(1 - share) } : { ...about, left: band(left), by: 1 - left / all }]]
  })
}

/** Share of its own ± a value keeps when it is measured with its tool; 1 where it is known as well already, undefined where the tool states no number. */
function keptByTool(fact: Fact): number | undefined {
  const field = fieldAt(fact.path)
  if (field?.is !== 'quantity' || field.measure === undefined || !(fact.half !== undefined && fact.half > 0)) return undefined
  const half = halfByTool(field.measure.accuracy, fact.value, field.kind)
  return half === undefined ? undefined : Math.min(1, half / fact.half)
}

/** The ± of a figure alone, in the unit the figure is shown in; a digit more than beside its value, so that two can be told apart. */
const bandText = ({ shows, unit }: Figure, half: number, system: System): string =>
  `± ${writeQuantity(half, shows ?? kindOf(unit) ?? 'number', { system, digits: 3 })}`

/** A narrowing in words: what it is of, how wide the band is and would be, or the share where the tool states no number. */
export const narrowed = ({ label, share, now, left, by }: Narrowing): string =>
  by === 0
    ? `${label} stays ${now}: known as well as the tool can`
    : left === undefined || left === now
      ? `${Math.round(share * 100)} % of the band of ${label}, ${now}`
      : `${label} ${now} → ${left}`
