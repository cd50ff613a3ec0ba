import type { Kind } from '@ampwright/drawing'
import { useEffect, useState } from 'react'
import { useHand, useOf } from '../shell/in-hand.ts'
import type { DrawingLine } from '../worker/drawings.ts'
import { ChartView } from './chart-view.tsx'

/** The drawings of a stage: one of each kind at once, where there are several the one that is chosen. */
export function Charts({ kinds }: { readonly kinds: readonly Kind[] }) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    [all, setAll] = useState<readonly DrawingLine[]>([]),
    [chosen, setChosen] = useState<Readonly<Partial<Record<Kind, string>>>>({})
  useEffect(() => {
    if (told) void conversion.drawings().then(setAll)
  }, [conversion, told])
  return (
    <>
      {kinds.map(kind => {
        const of = all.filter(d => d.kind === kind),
          shown = of.find(d => d.id === chosen[kind]) ?? of[0]
        if (shown === undefined) return null
        return (
          <div key={kind}>
            {of.length > 1 ? (
              <label className="small">
                Which {kind}{' '}
                <select value={shown.id} onChange={e => setChosen({ ...chosen, [kind]: e.target.value })}>
                  {of.map(d => (
                    <option key={d.id} value={d.id}>
                      {d.label}
                    </option>
                  ))}
                </select>
              </label>
            ) : null}
            <ChartView key={shown.id} drawing={shown} />
          </div>
        )
      })}
    </>
  )
}
