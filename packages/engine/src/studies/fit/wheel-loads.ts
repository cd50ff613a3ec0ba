import { ladenWheel } from '../../vehicle/mass-on-wheels.ts'
import type { Figure, Value } from '../../working/value.ts'
import { type Kerb, ledger } from '../donor/ledger.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { sides, type Wheels } from './sides.ts'

const CORNERS = [
  ['frontLeft', 'front left', 'front'],
  ['frontRight', 'front right', 'front'],
  ['rearLeft', 'rear left', 'rear'],
  ['rearRight', 'rear right', 'rear'],
] as const

/** What each wheel carries at kerb and in every load case, where the donor car was weighed wheel by wheel. */
export const wheelLoads = study({
  id: 'wheel-load',
  stage: 'fit',
  asks: 'What does each wheel carry in every load case?',
  reads: (m, ask) => ({
    kerb: ask(ledger),
    wheels: maybe(from(ask(sides), s => s.wheels)),
    cases: Object.keys(m.brief.loads)
      .sort()
      .map(name => ({ name, is: maybe(from(ask(loadCases), l => l.cases[name] as Laden | Gaps)) })),
  }),
  answer: ({ kerb, wheels, cases }, make): Record<string, never> => {
    // Weighed by axles there is no left and right, and none is asked for.
    if (isGaps(wheels)) return {}
    const k = kerb as Kerb,
      atKerb = wheels as Wheels
    const laden = cases.flatMap(({ name, is }) => {
      if (isGaps(is)) return []
      const axles = is as Laden
      const loads = CORNERS.map(([key, words, axle]): readonly [string, Figure] => [
        key,
        make.work(
          'wheel',
          ladenWheel,
          { wheel: atKerb[key], axle: axles[axle], before: k[axle] },
          { item: `${name}, ${words}`, label: `${words} wheel, ${name}` },
        ),
      ])
      return [{ name, cells: { ...Object.fromEntries(loads), total: axles.mass as Value } }]
    })
    make.table('wheels', {
      label: 'Wheels in every load case, people and luggage taken on the centre line',
      columns: [...CORNERS.map(([key, label]) => ({ key, label, unit: 'kg' })), { key: 'total', label: 'all four', unit: 'kg' }],
      rows: [{ name: 'at kerb', cells: { ...atKerb, total: k.kerb } }, ...laden],
    })
    return {}
  },
})
