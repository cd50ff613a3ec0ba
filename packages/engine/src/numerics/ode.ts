import { densePiece, errorNorm, firstStep, type Piece, type Rates, stages, stateWithin } from './dormand-prince.ts'
import { root } from './root.ts'

/** Something to watch for: the moment `of` changes sign; with `stop` the run ends there. */
export type Watch = { readonly of: (t: number, y: Float64Array) => number; readonly stop?: boolean }
export type Crossing = { readonly watch: number; readonly time: number; readonly state: Float64Array }

export type OdeSettings = {
  /** Error allowed in one step: `relative` times the size of the state plus `absolute` (one for all, or one for each). */
  readonly relative: number
  readonly absolute: number | readonly number[]
  readonly firstStep?: number
  readonly largestStep?: number
  readonly mostSteps?: number
  readonly watch?: readonly Watch[]
}

export type OdeSolution = {
  /** Ends of the steps taken, the start included, and the states there. */
  readonly times: Float64Array
  readonly states: readonly Float64Array[]
  readonly crossings: readonly Crossing[]
  /** The watch that ended the run, undefined when it reached its end. */
  readonly stoppedBy: number | undefined
  /** State at any time between start and end. Throws RangeError outside. */
  readonly at: (t: number) => Float64Array
}

/**
 * Follows a set of ordinary differential equations from `start` to `end` by the method of Dormand and Prince, order 5(4), with steps chosen by
 * the estimated error, a continuous answer of fourth order between the steps, and watched moments located on it.
 *
 * Undefined when it gets no further: the steps shrink to nothing (a jump or a pole) or `mostSteps` (100 000) are used up. For stiff equations it
 * is slow, not wrong. Two crossings of one watch within a step cancel and go unseen: limit `largestStep` where that can happen. A watch that
 * starts at exactly zero is not counted until it has left zero.
 * Throws RangeError when `end` is not behind `start`, a start value is not finite, or a tolerance or step is not above zero.
 * Source: Dormand and Prince, A family of embedded Runge–Kutta formulae, J. Comput. Appl. Math. 6 (1980) 19–26; step control and dense output:
 * Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, II.4 to II.6 (from memory).
 */
export function solveOde(
  rates: Rates,
  start: number,
  state: ArrayLike<number>,
  end: number,
  settings: OdeSettings,
): OdeSolution | undefined {
  check(start, state, end, settings)
  const n = state.length
  const { relative, absolute, largestStep = end - start, mostSteps = 100_000, watch = [] } = settings
  const floor = Float64Array.from({ length: n }, (_, i) => (typeof absolute === 'number' ? absolute : absolute[i]!))
  const k = Array.from({ length: 7 }, () => new Float64Array(n))
  const scratch = new Float64Array(n)
  const times = [start]
  const states: Float64Array[] = [Float64Array.from(state)]
  const steps: Piece[] = []
  const crossings: Crossing[] = []
  let t = start
  let y: Float64Array = states[0]!
  rates(t, y, k[0]!)
  let signs = watch.map(w => w.of(t, y))
  let h = Math.min(largestStep, settings.firstStep ?? firstStep(rates, t, y, k[0]!, relative, floor, end - start))
  let rejected = false
  for (let count = 0; t < end; count++) {
    if (count >= mostSteps || !(h > 4 * Number.EPSILON * Math.max(Math.abs(t), Math.abs(end)))) return undefined
    // A last sliver is taken along with the step before it.
    if (t + 1.000001 * h >= end) h = end - t
    const next = stages(rates, t, h, y, k, scratch)
    const error = errorNorm(h, k, y, next, relative, floor)
    if (!(error <= 1)) {
      h *= Number.isFinite(error) ? Math.max(0.2, 0.9 * error ** -0.2) : 0.2
      rejected = true
      continue
    }
    const step = densePiece(t, h, y, next, k)
    const after = t + h >= end ? end : t + h
    const values = watch.map(w => w.of(after, next))
    const found = crossingsIn(step, after, next, watch, signs, values)
    const stop = found.find(f => watch[f.watch]!.stop)
    crossings.push(...(stop ? found.slice(0, found.indexOf(stop) + 1) : found))
    steps.push(step)
    times.push(stop ? stop.time : after)
    states.push(stop ? stop.state : next)
    if (stop) return solution(times, states, steps, crossings, stop.watch)
    t = after
    y = next
    signs = values
    k[0]!.set(k[6]!)
    const growth = error > 0 ? 0.9 * error ** -0.2 : 10
    h = Math.min(largestStep, h * Math.min(rejected ? 1 : 10, Math.max(0.2, growth)))
    rejected = false
  }
  return solution(times, states, steps, crossings, undefined)
}

/** Crossings within one step, earliest first. */
function crossingsIn(step: Piece, after: number, next: Float64Array, watch: readonly Watch[], before: number[], now: number[]): Crossing[] {
  const found: Crossing[] = []
  for (const [i, w] of watch.entries()) {
    const was = before[i]!
    const is = now[i]!
    if (!((was < 0 && is >= 0) || (was > 0 && is <= 0))) continue
    // The ends are taken as already known: the dense output may round to the other side of zero there.
    const value = (t: number): number => (t === step.t ? was : t === after ? is : w.of(t, stateWithin(step, t)))
    const time = root(value, step.t, after, 0) ?? after
    found.push({ watch: i, time, state: time === after ? next : stateWithin(step, time) })
  }
  return found.sort((a, b) => a.time - b.time)
}

function solution(
  times: number[],
  states: Float64Array[],
  steps: Piece[],
  crossings: Crossing[],
  stoppedBy: number | undefined,
): OdeSolution {
  const first = times[0]!
  const last = times[times.length - 1]!
  const at = (t: number): Float64Array => {
    if (!(t >= first && t <= last)) throw new RangeError(`solution is known from ${first} to ${last}, asked at ${t}`)
    let low = 0
    let high = steps.length
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (t < times[middle]!) high = middle
      else low = middle
    }
    return t === times[low + 1] ? states[low + 1]!.slice() : stateWithin(steps[low]!, t)
  }
  return { times: Float64Array.from(times), states, crossings, stoppedBy, at }
}

function check(start: number, state: ArrayLike<number>, end: number, settings: OdeSettings): void {
  if (!(Number.isFinite(start) && Number.isFinite(end) && end > start))
    throw new RangeError(`solveOde: end must lie behind start, found ${start} to ${end}`)
  if (state.length === 0) throw new RangeError('solveOde: the state needs at least one value, found none')
  for (let i = 0; i < state.length; i++)
    if (!Number.isFinite(state[i])) throw new RangeError(`solveOde: state[${i}] must be finite, found ${state[i]}`)
  const { relative, absolute, firstStep, largestStep } = settings
  if (typeof absolute !== 'number' && absolute.length !== state.length) {
    throw new RangeError(`solveOde: absolute must hold one value for each of ${state.length}, found ${absolute.length}`)
  }
  for (const [name, value] of Object.entries({ relative, absolute, firstStep, largestStep })) {
    for (const v of Array.isArray(value) ? value : [value])
      if (v !== undefined && !(v > 0)) throw new RangeError(`solveOde: ${name} must be above zero, found ${v}`)
  }
}
