import type { CoastDownView, SheetGroup } from '@ampwright/workbench'
import { Field } from '../field/field.tsx'
import { fieldIn } from '../field/map-at.ts'
import { useHand } from '../shell/in-hand.ts'

const RUNS = ['out-1', 'back-1', 'out-2', 'back-2', 'out-3', 'back-3', 'out-4', 'back-4', 'out-5', 'back-5', 'out-6', 'back-6']

/** The steps as the file has them, each time a field, with the force they come to and how well the runs agree. */
export function Steps({ steps, view }: { readonly steps: readonly SheetGroup[]; readonly view: CoastDownView | undefined }) {
  const { openWorking } = useHand()
  // Two pairs are asked for always; of the others the one after the last that is filled, so that a further run can be typed.
  const filled = RUNS.findLastIndex(r => steps.some(s => fieldIn(s, r)?.text !== undefined)),
    runs = RUNS.slice(0, Math.max(4, filled + 1 + ((filled + 1) % 2)))
  const figure = (of: CoastDownView['steps'][string] | undefined, key: 'force' | 'accuracy', step: string) =>
    of?.[key] ? (
      <button
        type="button"
        className="num"
        onClick={() => openWorking(of[key]!.name)}
        aria-label={`Working of ${key === 'force' ? 'the force' : 'how well the runs agree'}, ${step}, ${of[key]!.text}`}
      >
        {of[key]!.text}
      </button>
    ) : (
      <span className="quiet">–</span>
    )
  return (
    <section aria-label="The steps">
      <h2>The steps</h2>
      <section className="scroll" aria-label="Steps of the coast-down, one row each" tabIndex={0}>
        <table className="many bench">
          <thead>
            <tr>
              <th scope="col" className="stays">
                Step
              </th>
              <th scope="col">Force</th>
              <th scope="col">Runs agree within</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
              {runs.map(r => (
                <th scope="col" key={r}>
                  {r.replace('-', ' ')}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {steps.map(s => (
              <tr key={s.path} id={`at-${s.path}`}>
                <th scope="row" className="stays">
                  {s.key}
                </th>
                <td className="followed">{figure(view?.steps[s.key], 'force', s.key)}</td>
                <td className="followed">{figure(view?.steps[s.key], 'accuracy', s.key)}</td>
                {['from', 'to', ...runs].map(key => {
                  const field = fieldIn(s, key)
                  return <td key={key}>{field ? <Field field={field} inline labelled={`${field.label}, ${s.key}`} /> : null}</td>
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  )
}
