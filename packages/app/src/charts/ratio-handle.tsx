import type { Scale } from '@ampwright/drawing'
import { useEffect, useState } from 'react'
import { HeadlineIf } from '../shell/headline-if.tsx'
import { useHand, useOf } from '../shell/in-hand.ts'

/** Moves the total ratio along its window: the headline shows at once what it would be, and nothing is kept until it is taken. */
export function RatioHandle({
  unit,
  scale,
  ratio,
  move,
}: {
  readonly unit: string
  readonly scale: Scale
  /** Where the handle was moved to, here or in the drawing; undefined while nobody has. */
  readonly ratio: number | undefined
  readonly move: (to: number | undefined) => void
}) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    [low, high] = scale.domain,
    [edit, setEdit] = useState<{ path: string; now: string }>()
  useEffect(() => move(undefined), [told, move])
  useEffect(() => {
    setEdit(undefined)
    if (ratio === undefined) return
    let newer = false
    void conversion.ratioEdit(unit, ratio).then(made => {
      if (!newer && typeof made?.now === 'string') setEdit({ path: String(made.path), now: made.now })
    })
    return () => {
      newer = true
    }
  }, [conversion, unit, ratio])
  return (
    <div className="handle">
      <label>
        Total ratio of {unit}{' '}
        <input
          type="range"
          min={low}
          max={high}
          step={(high - low) / 200}
          value={ratio ?? (low + high) / 2}
          onChange={e => move(Number(e.target.value))}
          aria-valuetext={ratio === undefined ? 'as it is' : `${ratio.toFixed(2)}: ${edit ? `${edit.path} ${edit.now}` : ''}`}
        />
      </label>
      {ratio === undefined ? (
        <span className="quiet small">Move it to see what another ratio would do.</span>
      ) : (
        <div role="status">
          <p className="small">
            {ratio.toFixed(2)} : 1{edit ? `, by ${edit.path.replace(/^drive\.units\./, '')}: ${edit.now}` : ''}
          </p>
          {edit ? (
            <>
              <HeadlineIf edits={[edit]} />
              <button type="button" className="main" onClick={() => void conversion.edit([edit], `total ratio of ${unit}`)}>
                Keep it
              </button>
            </>
          ) : null}
        </div>
      )}
    </div>
  )
}
