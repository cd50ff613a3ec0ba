import { useInHand } from '../shell/in-hand.ts'
import { Findings } from './findings.tsx'

const ORDER = ['failing', 'unanswered', 'marginal', 'accepted', 'sound', 'does not apply'] as const

/** Every finding of the car, harm first. */
export function FindingsPage() {
  const { opened } = useInHand(),
    all = opened.told?.findings ?? []
  return (
    <>
      <h1>All findings</h1>
      <p className="lede">What must hold, and whether it does: what can hurt people first. Ampwright informs; it does not approve.</p>
      {ORDER.map(outcome => {
        const of = all.filter(f => f.outcome === outcome)
        return of.length === 0 ? null : (
          <details key={outcome} open={outcome === 'failing' || outcome === 'unanswered' || outcome === 'marginal'} className="group">
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
