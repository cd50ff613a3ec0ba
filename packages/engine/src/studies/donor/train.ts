import type { Trailer } from '../../model/trips.ts'
import { trainMass } from '../../vehicle/road-load.ts'
import { couplingStrength } from '../../vehicle/towing.ts'
import { type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type Laden, loadCases } from './load-cases.ts'
import { ratingsOf } from './ratings.ts'

/** One load case with a trailer on. */
export type Train = {
  readonly trailer: string
  readonly mass: Figure | Gaps
  readonly nose: Value | Gaps
  readonly trailed: Value | Gaps
  readonly braked: 'yes' | 'no' | Gaps
  readonly strength: Figure | Gaps
}

/** Load cases that name a trailer, with its name. */
export const towing = (
  loads: Readonly<Record<string, { readonly trailer: { readonly value?: string } | Gap }>>,
): readonly (readonly [string, string])[] =>
  Object.entries(loads).flatMap(([name, { trailer: t }]) => (isGap(t) || t.value === undefined ? [] : [[name, t.value] as const]))

/** Mass of car and trailer together, nose load and the coupling strength needed, for each load case with a trailer. */
export const train = study({
  id: 'train',
  stage: 'donor',
  asks: 'What does it weigh with a trailer, and what presses on the coupling?',
  reads: (m, ask) => {
    const pulled = towing(m.brief.loads),
      loads = ask(loadCases)
    return {
      names: pulled.map(([name, trailer]) => ({ name, trailer })),
      cases: pulled.map(([name, trailer]) => {
        const t: Trailer | undefined = m.trips.trailers[trailer]
        const gap: Gap = { gap: true, path: `trips.trailers.${trailer}`, label: `trailer ${trailer}`, until: 'any time', why: 'missing' }
        const mass = t?.mass ?? gap,
          nose = t?.noseLoad ?? gap
        return {
          laden: maybe({ laden: from(loads, l => l.cases[name] as Laden | Gaps), mass, nose }),
          nose: maybe(nose),
          trailed: maybe(mass),
          braked: maybe(t?.braked ?? gap),
          strength: maybe({ car: ratingsOf(m).total, trailer: mass }),
        }
      }),
    }
  },
  answer: ({ names, cases }, make): { cases: Readonly<Record<string, Train>> } => ({
    cases: Object.fromEntries(
      cases.map((c, i): [string, Train] => {
        const { name, trailer } = names[i] as { name: string; trailer: string }
        return [
          name,
          {
            trailer,
            mass: isGaps(c.laden)
              ? c.laden
              : make.work(
                  'mass',
                  trainMass,
                  { car: c.laden.laden.mass, trailer: c.laden.mass, nose: c.laden.nose },
                  { item: name, label: `Mass of car and trailer, ${name}` },
                ),
            nose: c.nose,
            trailed: c.trailed,
            braked: isGaps(c.braked) ? c.braked : c.braked.value,
            strength: isGaps(c.strength)
              ? c.strength
              : make.work('coupling', couplingStrength, c.strength, { item: name, label: `Coupling strength needed, ${name}` }),
          },
        ]
      }),
    ),
  }),
})
