import { heating, timeAtHeating, torqueForTime } from '../../drive/winding.ts'
import { type Figure, standard } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { driveUnits } from './drive-units.ts'
import { COOL_START, lasting, WARM_START } from './operating-points.ts'
import type { UnitFigures } from './unit-figures.ts'

/** No times where the torque allowed is one the motor stands for ever. */
export type PeakTime = { readonly cool?: Figure; readonly warm?: Figure; readonly heating: Figure }
const STARTS = [
  { key: 'cool', start: COOL_START, label: 'from the temperature of the coolant' },
  { key: 'warm', start: WARM_START, label: 'from half way to the limit' },
] as const
const TIMES = [10, 30, 60, 300, 1800] as const
const HOT = standard('windings.hot', 'windings close to their limit', 'θ_0', 0.9, '1', { work: 'definition', place: 'operating point' })

/** How long each motor stands its peak, cool and warm, and what torque it stands for how long. */
export const peakTime = study({
  id: 'peak-time',
  stage: 'drive',
  asks: 'How long may each motor pull its hardest, and what is left when it is warm?',
  reads: (m, ask) => ({
    names: Object.keys(m.drive.units),
    all: maybe(ask(driveUnits)),
    ready: Object.keys(m.drive.units).map(name =>
      maybe(
        from(ask(driveUnits), d => {
          const u = d.units[name] as UnitFigures | Gaps
          return isGaps(u) ? u : { name }
        }),
      ),
    ),
  }),
  answer: ({ names, all, ready }, make): { units: Readonly<Record<string, PeakTime | Gaps>> } => ({
    units: Object.fromEntries(
      ready.map((r, i): [string, PeakTime | Gaps] => {
        const name = names[i] as string
        return [name, isGaps(r) ? r : ofUnit(make, (all as { units: Record<string, UnitFigures> }).units[name] as UnitFigures)]
      }),
    ),
  }),
})

function ofUnit(make: Maker, u: UnitFigures): PeakTime {
  const item = u.name
  const rating = { rated: u.continuousTorque }
  const p = make.work('heating', heating, { torque: u.peakTorque, ...rating }, { item, label: `Heating at the torque allowed, ${item}` })
  const times = p.value > 1 ? STARTS : []
  const lasts = times.map(({ key, start, label }) => [
    key,
    make.work(key, timeAtHeating, { heating: p, start, time: u.windingTime }, { item, label: `Full pull ${label}, ${item}` }),
  ])
  const torque = (seconds: number, key: string, start: typeof COOL_START): Figure =>
    make.work(
      `${key}-${seconds}-s`,
      torqueForTime,
      { duration: lasting(seconds), start, time: u.windingTime, allowed: u.peakTorque, ...rating },
      { item, label: `Torque for ${seconds} s, ${key}, ${item}` },
    )
  make.table(
    'torque',
    {
      label: `Torque of ${item} for a time`,
      columns: [
        { key: 'cool', label: 'from the coolant’s temperature', unit: 'N·m' },
        { key: 'warm', label: 'from half way to the limit', unit: 'N·m' },
        { key: 'hot', label: 'from close to the limit', unit: 'N·m' },
      ],
      rows: TIMES.map(s => ({
        name: `${s} s`,
        cells: { cool: torque(s, 'cool', COOL_START), warm: torque(s, 'warm', WARM_START), hot: torque(s, 'hot', HOT) },
      })),
    },
    item,
  )
  return { heating: p, ...Object.fromEntries(lasts) }
}
