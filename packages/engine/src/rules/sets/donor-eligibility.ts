import { type Comparison, compared, demandPositive, lies, type Statement, stated } from './comparison.ts'
import type { Key } from './keys.ts'
import { NAMED } from './requirement.ts'
import type { Limits } from './sets.ts'

/** A day, a month or a year of the calendar; months and days count from 1. */
export type CalendarDate = { readonly year: number; readonly month?: number; readonly day?: number }

/** Months of 31 days put dates in order and make equal days of two years exactly whole years apart. */
const DAYS = 31
const YEAR = 12 * DAYS

/** Age at conversion [years]; a date known too coarsely is taken against the car and marked where that decides. */
export function donorAge(
  limits: Limits,
  dates: { readonly firstRegistered: CalendarDate; readonly conversion: CalendarDate },
): Comparison | undefined {
  const limit = limits('donor.age.min')
  if (typeof limit?.requirement.value !== 'number') return undefined
  const low = limit.requirement.value
  const registered = span(dates.firstRegistered)
  const conversion = span(dates.conversion)
  const youngest = (conversion.first - registered.last) / YEAR
  const oldest = (conversion.last - registered.first) / YEAR
  return compared(limit, { role: 'limit', found: youngest, low, unit: 'years', ...coarse(youngest, oldest, { low }) })
}

/** Date of build against the dates between which the route is open, as a year with decimals. */
export function donorBuilt(limits: Limits, built: CalendarDate): readonly Comparison[] {
  const { first, last } = span(built)
  const from = limits('donor.built.from')
  const to = limits('donor.built.to')
  const answers: Comparison[] = []
  if (from) {
    const low = span(dateOf(from.requirement.value)).first / YEAR
    answers.push(compared(from, { role: 'limit', found: first / YEAR, low, unit: 'year', ...coarse(first / YEAR, last / YEAR, { low }) }))
  }
  if (to) {
    // "before": the last day that still counts is the one ahead of the date named
    const high = (span(dateOf(to.requirement.value)).first - 1) / YEAR
    answers.push(compared(to, { role: 'limit', found: last / YEAR, high, unit: 'year', ...coarse(last / YEAR, first / YEAR, { high }) }))
  }
  return answers
}

/** Seats planned against seats registered. */
export function seats(limits: Limits, { registered, planned }: { readonly registered: number; readonly planned: number }) {
  const limit = limits('seats.change')
  if (!limit) return undefined
  demandPositive({ registered, planned })
  if (limit.requirement.value !== NAMED.moreSeats) return stated(limit)
  return compared(limit, { role: 'trigger', found: planned, high: registered, unit: 'seats' })
}

/** Gross mass of the donor [kg] against the mass up to which the set holds. */
export function donorGross(limits: Limits, gross: number): Comparison | undefined {
  const limit = limits('donor.gross.max')
  if (typeof limit?.requirement.value !== 'number' || limit.requirement.unit !== 't') return undefined
  demandPositive({ gross })
  return compared(limit, { role: 'limit', found: gross, high: 1000 * limit.requirement.value, unit: 'kg' })
}

const CONDITIONS = [
  'donor.category',
  'donor.registered',
  'donor.excluded',
  'donor.condition',
  'donor.rules-known',
  'emc.donor',
] as const satisfies readonly Key[]

/** What else the donor has to be, in words. */
export function donorConditions(limits: Limits): readonly Statement[] {
  return CONDITIONS.flatMap(key => limits(key) ?? []).map(stated)
}

function coarse(against: number, infavour: number, band: { low?: number; high?: number }) {
  return !lies(against, band) && lies(infavour, band) ? { marginalReason: 'date-too-coarse' as const } : {}
}

function span({ year, month, day }: CalendarDate): { first: number; last: number } {
  const inRange = (x: number | undefined, most: number) => x === undefined || (Number.isInteger(x) && x >= 1 && x <= most)
  if (!Number.isInteger(year) || !inRange(month, 12) || !inRange(day, DAYS) || (day !== undefined && month === undefined))
    throw new RangeError(`not a calendar date: year ${year}, month ${month}, day ${day}`)
  const index = (m: number, d: number) => year * YEAR + (m - 1) * DAYS + (d - 1)
  return { first: index(month ?? 1, day ?? 1), last: index(month ?? 12, day ?? DAYS) }
}

function dateOf(value: unknown): CalendarDate {
  const [year, month, day] = typeof value === 'string' ? value.split('-').map(Number) : []
  if (year === undefined || month === undefined) throw new Error(`a row names no date: ${String(value)}`)
  return { year, month, ...(day === undefined ? {} : { day }) }
}
