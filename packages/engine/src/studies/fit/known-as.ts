import { leaves } from '../../working/leaves.ts'
import { COVERAGE, spread } from '../../working/spread.ts'
import type { Fact, Value } from '../../working/value.ts'

const NOT_SAID = 'not said how'
/** The least certain first. */
const ORDER = ['assumed', NOT_SAID, 'datasheet', 'standard', 'measured']
const howOf = (f: Fact): string => f.origin?.how ?? NOT_SAID

/** What tells how a value is known: of what it rests on, all that carries a ± or says where it is from. A plain count is a decision. */
function weakest(value: Value): Fact | undefined {
  const telling = leaves(value).filter(f => f.half !== undefined || f.origin !== undefined)
  return telling.reduce<Fact | undefined>(
    (a, b) => (a === undefined || ORDER.indexOf(howOf(b)) < ORDER.indexOf(howOf(a)) ? b : a),
    undefined,
  )
}

/** How a value is known, in words: by the least certain of what it rests on. */
export function knownAs(value: Value): string {
  const fact = weakest(value)
  if (!fact) return NOT_SAID
  const how = howOf(fact),
    note = fact.origin?.note
  return note ? `${how}, ${note}` : how
}

/** Whether it was weighed, and not read off a sheet, assumed or left unsaid. */
export const isMeasured = (value: Value): boolean => ['measured', 'standard'].includes(knownAs(value).split(',', 1)[0] as string)

/** ± of a value by what it rests on; 0 where nothing of it has one. */
export const halfOf = (value: Value): number => COVERAGE * Math.hypot(...spread(value).values())
