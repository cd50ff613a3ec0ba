import { COUNTED, type Counted, countedAs } from '@ampwright/workbench'
import { useInHand } from '../shell/in-hand.ts'
import { Findings } from './findings.tsx'

/** What holds and what the rules leave out themselves is folded; what a person set aside stays in view. */
const FOLDED: readonly Counted[] = ['accepted', 'sound', 'does not apply']

/** Every finding of the car, harm first. */
export function FindingsPage() {
  const { opened } = useInHand(),
    all = opened.told?.findings ?? []
  return (
    <>
      <h1>All findings</h1>
      <p className="lede">What must hold, and whether it does: what can hurt people first. Ampwright informs; it does not approve.</p>
      {COUNTED.map(outcome => {
        const of = all.filter(f => countedAs(f) === outcome)
        return of.length === 0 ? null : (
          <details key={outcome} open={!FOLDED.includes(outcome)} className="group">
            <summary>
              {of.length} {outcome}
            </summary>
            <Findings findings={of} />
          </details>
        )
      })}
    </>
  )
}
