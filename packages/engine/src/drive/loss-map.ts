import { grid } from '../numerics/grid.ts'
import { formula } from '../working/formula.ts'
import type { Grid } from '../working/value.ts'

/** What is wrong with a map of efficiency or loss over motor speed [rad/s] and torque [N·m], in words; undefined when it can be used. */
export function mapProblem(map: Grid, of: 'efficiency' | 'loss'): { readonly found: string; readonly accepted: string } | undefined {
  const accepted =
    of === 'efficiency'
      ? 'motor speed and torque from zero or above, efficiency of motor with inverter from 0 to below 1'
      : 'motor speed and torque from zero or above, loss of motor with inverter in watts, zero or above'
  if ((map.x[0] as number) < 0) return { found: `a motor speed of ${map.x[0]} rad/s`, accepted }
  if ((map.y[0] as number) < 0) return { found: `a torque of ${map.y[0]} N·m`, accepted }
  if (of === 'loss') {
    const negative = map.z.find(z => z < 0)
    return negative === undefined ? undefined : { found: `a loss of ${negative} W`, accepted }
  }
  const wrong = map.z.find(z => !(z >= 0 && z < 1))
  if (wrong !== undefined) return { found: `an efficiency of ${wrong}`, accepted }
  const usable = Array.from(map.y.keys()).filter(j => usableAt(map, map.x.length - 1, j)).length
  return usable >= 2 ? undefined : { found: 'fewer than two torques with an efficiency above 0.05 at the highest speed', accepted }
}

const LEAST_USABLE = 0.05
const usableAt = ({ x, y, z }: Grid, i: number, j: number): boolean =>
  (x[i] as number) > 0 && (y[j] as number) > 0 && (z[i * y.length + j] as number) > LEAST_USABLE

/**
 * Losses behind a map of efficiency: M·ω·(1/η − 1) where there is power to speak of. Near standstill and without torque an efficiency says nothing; there the
 * loss is carried on as a + c·M² from the two lowest torques that say something, and along speed from the nearest such row.
 *
 * Throws RangeError when `mapProblem` finds fault.
 */
export function lossesOfMap(map: Grid): Grid {
  const problem = mapProblem(map, 'efficiency')
  if (problem) throw new RangeError(`efficiency map: ${problem.found}; accepted: ${problem.accepted}`)
  const { x, y, z } = map,
    columns = y.length,
    out = new Float64Array(z.length),
    done: boolean[] = []
  for (let i = 0; i < x.length; i++) {
    const good = Array.from(y.keys()).filter(j => usableAt(map, i, j))
    const loss = (j: number): number =>
      lossByEfficiency({ torque: y[j] as number, speed: x[i] as number, efficiency: z[i * columns + j] as number })
    done[i] = good.length >= 2
    if (!done[i]) continue
    const [j1, j2] = good as [number, number],
      m1 = (y[j1] as number) ** 2,
      m2 = (y[j2] as number) ** 2
    const c = Math.max(0, (loss(j2) - loss(j1)) / (m2 - m1)),
      a = Math.max(0, loss(j1) - c * m1)
    for (let j = 0; j < columns; j++) out[i * columns + j] = good.includes(j) ? loss(j) : a + c * (y[j] as number) ** 2
  }
  for (let i = x.length - 1; i >= 0; i--) {
    if (done[i]) continue
    const other = Array.from(x.keys())
      .filter(k => done[k])
      .sort((p, q) => Math.abs(p - i) - Math.abs(q - i))[0] as number
    for (let j = 0; j < columns; j++) out[i * columns + j] = out[other * columns + j] as number
  }
  return grid(x, y, out)
}

/** Loss behind an efficiency. */
export const lossByEfficiency = formula(
  {
    id: 'loss-by-efficiency',
    label: 'Loss behind an efficiency',
    gives: { symbol: 'P_V', unit: 'W', label: 'loss' },
    takes: {
      torque: { symbol: 'M', unit: 'N·m', label: 'torque' },
      speed: { symbol: 'ω', unit: 'rad/s', label: 'motor speed', shows: 'rotational speed' },
      efficiency: { symbol: 'η', unit: '1', label: 'efficiency', shows: 'share' },
    },
    text: 'P_V = M · ω · (1 / η − 1)',
    source: { work: 'definition', place: 'efficiency' },
    proof: {
      examples: [
        {
          takes: { torque: 60, speed: 400, efficiency: 0.92293 },
          gives: 2004,
          within: 0.5,
          source: { work: 'larminie-lowry', place: 'eq. 7.23, induction motor at 60 N·m and 400 rad/s', mark: 'from memory' },
        },
      ],
    },
  },
  ({ torque, speed, efficiency }) => torque * speed * (1 / efficiency - 1),
)
