import { applyEdits, formatIssue, readText } from '@ampwright/conversion'
import { type Car, textOf } from './cars.ts'

/** What a sample plans: taken out, its donor, its brief and what the brief names stay. */
const PLANNED = [
  'drive',
  'pack',
  'charging.charger',
  'charging.inlet',
  'charging.dc',
  'charging.taper',
  'donor.added',
  'donor.not-listed',
  'fit.handles',
  'fit.bodies',
  'high-voltage',
] as const

const stands = (text: string, path: string): boolean => {
  let node: ReturnType<typeof readText>['tree'] | undefined = readText(text).tree
  for (const key of path.split('.')) {
    const next = node?.entries.get(key)?.node
    if (!next) return false
    node = next.kind === 'group' ? next : undefined
  }
  return true
}
/** A sample as it stood before anybody planned a conversion. */
export function stripped(car: Car): string {
  const text = textOf(car),
    done = applyEdits(
      text,
      PLANNED.filter(path => stands(text, path)).map(path => ({ path, now: null })),
    )
  if (!done.ok) throw new Error(formatIssue(done.problem))
  return done.text
}
