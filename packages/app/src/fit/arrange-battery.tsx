import type { ArrangingPlan } from '@ampwright/workbench'
import { proxy } from 'comlink'
import { useEffect, useRef, useState } from 'react'
import { useAway, useHand } from '../shell/in-hand.ts'
import type { Arranged, Looking } from '../worker/arranging.ts'
import { startAlone } from '../worker/engine.ts'
import { ArrangementsTable } from './arrangements-table.tsx'

const STEPS = 2000
/** Highest number a field of this section takes. */
const MOST = 1_000_000

/** Looks for ways to arrange the modules in boxes in the spaces of the car; one of them is previewed on the whole car and taken over. */
export function ArrangeBattery() {
  const { conversion } = useHand(),
    away = useAway(),
    [looking, setLooking] = useState<Looking>({ seed: 1, steps: STEPS }),
    [strings, setStrings] = useState(0),
    [plan, setPlan] = useState<ArrangingPlan>(),
    [found, setFound] = useState<Arranged>(),
    [said, setSaid] = useState<string>(),
    [running, setRunning] = useState(false),
    end = useRef<() => void>(undefined)
  const stop = (): void => {
    end.current?.()
    end.current = undefined
    setRunning(false)
  }
  useEffect(() => () => end.current?.(), [])
  const start = async (): Promise<void> => {
    setSaid(undefined)
    setFound(undefined)
    const made = await conversion.arrangingPlan(strings > 0 ? { strings: { least: strings, most: strings } } : {})
    if ('refused' in made) return setSaid(made.refused)
    setPlan(made)
    setRunning(true)
    // A thread of its own: typing and everything else goes on meanwhile, and stopping it is ending it.
    const alone = startAlone()
    end.current = alone.stop
    const last = await alone.engine.arrange(made, looking, conversion.units, proxy(setFound) as never)
    if (end.current !== alone.stop) return
    setFound(last)
    stop()
  }
  return (
    <section aria-label="Arrange the battery">
      <h2>Arrange the battery</h2>
      <p>
        Looks for places for the modules in the spaces that take batteries, beside what stands there and must stay free. Boxes that are
        planned now are put aside while it looks. Nothing is changed until you take one.
      </p>
      <details className="group">
        <summary>How to look</summary>
        <div className="handle">
          <Count label="strings; 0: as the file says" least={0} value={strings} set={setStrings} />
          <Count
            label="steps; more takes longer and may find fuller ones"
            least={1}
            value={looking.steps}
            set={steps => setLooking({ ...looking, steps })}
          />
          <Count label="seed; another one may find others" least={0} value={looking.seed} set={seed => setLooking({ ...looking, seed })} />
        </div>
      </details>
      <p className="bar">
        <button type="button" className="main" aria-disabled={running} onClick={() => running || void start()}>
          Look for arrangements
        </button>
        <button type="button" aria-disabled={!running} onClick={stop}>
          Stop
        </button>
      </p>
      {said ? (
        <div className="note" role="alert">
          {said}
        </div>
      ) : null}
      <div role="status">
        {running ? <p>{found ? `Looking … ${found.view.steps} steps so far.` : 'Looking at the rooms …'}</p> : null}
        {found?.view.told.map(line => (
          <p key={line} className="small">
            {line}
          </p>
        ))}
      </div>
      {found && plan && found.view.arrangements.length ? (
        <ArrangementsTable found={found} plan={plan} away={away} taken={() => setFound(undefined)} />
      ) : null}
    </section>
  )
}

/** A whole number that is typed or stepped. */
function Count({
  label,
  least,
  value,
  set,
}: {
  readonly label: string
  readonly least: number
  readonly value: number
  readonly set: (n: number) => void
}) {
  return (
    <label className="counted">
      {label}{' '}
      <input
        type="number"
        min={least}
        max={MOST}
        step={1}
        value={value}
        onChange={e => {
          const n = Math.round(Number(e.target.value))
          if (n >= least && n <= MOST) set(n)
        }}
      />
    </label>
  )
}
