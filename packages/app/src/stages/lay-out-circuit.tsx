import { useState } from 'react'
import { PreviewView } from '../findings/finding.tsx'
import { useAway, useHand, useOf } from '../shell/in-hand.ts'
import type { Preview } from '../worker/service.ts'

/** Where no circuit is described yet: one for the boxes, units and users of the car, tried on the whole car before it is taken. */
export function LayOutCircuit() {
  const { conversion } = useHand(),
    away = useAway(),
    sheet = useOf(o => o.sheets['high-voltage']),
    [tried, setTried] = useState<Preview>(),
    [said, setSaid] = useState<string>()
  const described = sheet === undefined || (sheet.is === 'group' && sheet.children.some(map => map.is === 'map' && map.rows.length > 0))
  if (described) return null
  const edits = async () => {
    const made = await conversion.circuitEdits()
    if (!('refused' in made)) return made
    setSaid(made.refused)
    return undefined
  }
  const lay = async (): Promise<void> => {
    setSaid(undefined)
    const made = await edits()
    if (made) setTried(await conversion.preview(made))
  }
  const take = async (): Promise<void> => {
    // Asked for anew: the car may have changed while somebody looked.
    const made = await edits()
    setTried(undefined)
    if (!made) return
    const issues = await conversion.edit(made, 'circuit laid out')
    if (issues[0]) conversion.say(issues[0].what)
  }
  return (
    <>
      <p>
        No circuit is described yet. One can be laid out for the boxes, drive units and users this car has: a string over all boxes with a
        fuse in each, a service disconnect, a contactor in each pole, precharge, and a fuse before every user. Sizes and lengths stay
        questions.
      </p>
      <p className="bar">
        <button type="button" className="main" aria-disabled={away} onClick={() => away || void lay()}>
          Lay out a circuit
        </button>
      </p>
      {said ? (
        <div className="note" role="alert">
          {said}
        </div>
      ) : null}
      {tried ? <PreviewView preview={tried} take={() => void take()} leave={() => setTried(undefined)} /> : null}
    </>
  )
}
