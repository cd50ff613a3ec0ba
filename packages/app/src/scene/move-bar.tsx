import { HeadlineIf } from '../shell/headline-if.tsx'
import { useHand } from '../shell/in-hand.ts'
import type { SceneView } from '../worker/drawings.ts'
import type { Place } from './car-scene.ts'

type Edit = { readonly path: string; readonly now: string }
/** The edits that put a shape where it was moved to: only what has changed. */
export function movedTo(view: SceneView, { name, to }: { readonly name: string; readonly to: Place }): readonly Edit[] {
  const body = view.bodies.find(b => b.name === name)
  if (!body?.at) return []
  const { at, box } = body
  return to.flatMap((v, i) => {
    const mm = Math.round(v * 1000)
    return mm === Math.round((box.centre[i] as number) * 1000) ? [] : [{ path: at[i] as string, now: `${mm} mm` }]
  })
}

/** What a move would do to the headline, axle loads first among it; kept or put back. */
export function MoveBar({
  edits,
  name,
  putBack,
}: {
  readonly edits: readonly Edit[]
  readonly name: string
  readonly putBack: () => void
}) {
  const { conversion } = useHand()
  if (edits.length === 0) return null
  return (
    <div role="status">
      <p className="small">
        {name} moved: {edits.map(e => `${e.path.slice(e.path.lastIndexOf('.') + 1)} ${e.now}`).join(', ')}
      </p>
      <HeadlineIf edits={edits} same={<p className="small quiet">The headline stays as it is.</p>} />
      <button type="button" className="main" onClick={() => void conversion.edit(edits, `${name} moved`)}>
        Keep it there
      </button>{' '}
      <button type="button" onClick={putBack}>
        Put it back
      </button>
    </div>
  )
}
