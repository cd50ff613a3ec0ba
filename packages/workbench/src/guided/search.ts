import type { Part } from '@ampwright/catalogue'
import { type Finding, isGap, type Model } from '@ampwright/engine'
import { type Base, spaces } from './base.ts'
import { classFigure, inOrder } from './class-figures.ts'
import type { Design } from './compose.ts'
import { driveRungs } from './drive-rungs.ts'
import type { ConceptKind } from './layouts.ts'
import { type PackRung, packRungs } from './pack-rungs.ts'
import { type Count, type Trial, trials } from './trial.ts'

/** What a search is at; the caller may stop it at any of these. */
export type Step = { readonly concept: string; readonly did: string; readonly trials: number }

/** Rules that say whether the motor and its ratio are enough. */
export const PULL = ['acceleration', 'top-speed', 'hill-start', 'climb', 'steady-speed'] as const
/** Rules that say whether it turns anything too fast. */
const TURNS = ['motor-over-speed', 'gearbox-speed'] as const
/** Rounds of pack, place and motor: each moves the others a little. */
const ROUNDS = 2
const SPLITS = 8

const WEIGHT = { S3: 4, S2: 2, S1: 1 } as const
/** How much is missed: a goal alone counts least, what costs parts twice that, what hurts people twice again. */
const failing = (found: readonly Finding[]): number => found.reduce((sum, f) => sum + (f.outcome === 'failing' ? WEIGHT[f.harm] : 0), 0)

/**
 * Looks for the least that meets the brief: the smallest pack that reaches, its place that leaves most room on the axles, the weakest motor and the ratio that
 * pull enough, the smallest charger that is quick enough. Always the same for the same file; where nothing meets a goal, what comes nearest.
 */
export function* search(base: Base, kind: ConceptKind, count: Count): Generator<Step, Design> {
  const attempt = trials(base, count),
    rungs = packRungs(),
    drives = driveRungs(kind.way),
    chargers = chargersFor(base.model),
    gears = Object.keys(base.model.donor.gearbox.gears)
  const gear = kind.way === 'kept gearbox, one gear' ? gears[Math.floor(gears.length / 2)] : undefined
  let design: Design = {
    kind,
    drive: drives[0] as Design['drive'],
    pack: rungs[0] as PackRung,
    bayShare: 0.5,
    charger: chargers[0] as Part,
    limits: [],
    ...(gear === undefined ? {} : { gear }),
    ...(kind.way === 'single reduction' ? { reduction: FIRST_REDUCTION } : {}),
  }
  const step = (did: string): Step => ({ concept: kind.id, did, trials: count.trials })
  for (let round = 0; round < ROUNDS; round++) {
    const pack = smallest(rungs, r => failing(attempt({ ...design, pack: r }).judged('range')) === 0)
    design = { ...design, pack }
    yield step('pack')
    design = { ...design, bayShare: roomiest(share => attempt({ ...design, bayShare: share }), base.model) }
    yield step('place of the pack')
    let best: { readonly design: Design; readonly misses: number } | undefined
    for (const drive of drives) {
      for (const ratio of ratios({ ...design, drive }, gears, attempt)) {
        const misses = missed(attempt(ratio), kind)
        if (!best || misses < best.misses) best = { design: ratio, misses }
        if (misses === 0) break
      }
      yield step('motor')
      if (best?.misses === 0) break
    }
    design = best?.design ?? design
  }
  const charger = smallest(chargers, c => failing(attempt({ ...design, charger: c }).judged('charging')) === 0)
  yield step('charger')
  return { ...design, charger }
}

const missed = (t: Trial, { way }: ConceptKind): number => {
  const pull = failing(t.judged(...PULL))
  return way === 'kept gearbox, one gear' || way === 'single reduction' ? pull + failing(t.judged(...TURNS)) : pull
}

/** The first of a rising list for which something holds, by halving; the last where it holds for none. */
function smallest<T>(list: readonly T[], holds: (x: T) => boolean): T {
  let low = 0,
    high = list.length - 1
  while (low < high) {
    const middle = (low + high) >> 1
    if (holds(list[middle] as T)) high = middle
    else low = middle + 1
  }
  return list[high] as T
}

/** The heaviest pack that leaves room on every axle and under the gross mass, with what it reaches; empty where none does. */
export type Lighter = {
  readonly pack?: { readonly part: string; readonly label: string }
  readonly ranges: readonly { readonly trip: string; readonly value: number }[]
}
/** Looks below the pack of a design that is too heavy for the pack the masses allow. */
export function lighter(base: Base, design: Design, count: Count): Lighter {
  const attempt = trials(base, count),
    lightest = [...packRungs()].sort((a, b) => b.mass - a.mass).filter(r => r.mass < design.pack.mass)
  const at = (pack: PackRung): Trial => attempt({ ...design, pack }),
    fits = (pack: PackRung): boolean => Math.min(...roomsOf(at(pack), /^room\.to@/)) >= 0
  const found = lightest.length ? smallest(lightest, fits) : undefined
  if (!found || !fits(found)) return { ranges: [] }
  const ranges = [...at(found).figures('range')].flatMap(([id, value]) =>
    id.startsWith('range.range@') ? [{ trip: id.slice(12), value }] : [],
  )
  return { pack: { part: found.part.id, label: packLabel(found) }, ranges }
}
export const packLabel = (p: PackRung): string =>
  `${p.modules} × ${p.part.label}, ${p.inSeries} in series${p.strings > 1 ? `, ${p.strings} strings` : ''}`

const roomsOf = (t: Trial, of: RegExp): readonly number[] => [...t.figures('room')].flatMap(([id, room]) => (of.test(id) ? [room] : []))

/** Share of the modules where the engine was that leaves the axle with least room the most. */
function roomiest(at: (share: number) => Trial, m: Model): number {
  if (spaces(m).length < 2) return 1
  let best = { share: 0.5, room: Number.NEGATIVE_INFINITY }
  for (let i = 0; i <= SPLITS; i++) {
    const share = i / SPLITS,
      rooms = roomsOf(at(share), /^room\.to@.* axle$/),
      room = Math.min(...rooms)
    if (rooms.length && room > best.room) best = { share, room }
  }
  return best.share
}

/** Chargers a place of the brief can feed, weakest first. */
function chargersFor({ charging }: Model): readonly Part[] {
  const phases = Object.values(charging.places).map(p => (isGap(p.phases) ? 1 : p.phases.value)),
    most = Math.max(1, ...phases)
  return inOrder('power', 'charger').filter(
    (p, i, all) =>
      (classFigure(p, 'phases') as number) <= most && all.findIndex(o => o.fields['power']?.text === p.fields['power']?.text) === i,
  )
}

const FIRST_REDUCTION = 2.5
/** Designs that differ in their ratio: every gear of a kept box, tallest first; for a single reduction what the window of the ratio allows. */
function* ratios(d: Design, gears: readonly string[], attempt: (d: Design) => Trial): Generator<Design> {
  if (d.kind.way === 'kept gearbox, one gear') {
    for (const gear of [...gears].reverse()) yield { ...d, gear }
    return
  }
  if (d.kind.way !== 'single reduction') return yield d
  const t = attempt({ ...d, reduction: FIRST_REDUCTION }),
    window = t.figures('window'),
    behind = behindReduction(t.model)
  const low = window.get('window.low@main'),
    high = window.get('window.high@main')
  const total = low !== undefined && high !== undefined ? Math.min(high, (low + high) / 2) : (low ?? high)
  yield behind === undefined || total === undefined ? d : { ...d, reduction: Math.round((total / behind) * 20) / 20 }
}
/** Ratio from the output of the reduction to the wheels. */
function behindReduction({ donor }: Model): number | undefined {
  if (isGap(donor.finalDrive)) return undefined
  const { high } = donor.transferCase
  return donor.finalDrive.value * (isGap(high) ? 1 : high.value)
}
