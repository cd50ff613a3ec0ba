import type { Edit } from '@ampwright/conversion'
import { ARRANGEMENT_HEADS, type ArrangingPlan, type ArrangementWords } from '@ampwright/workbench'
import { useState } from 'react'
import { PreviewView } from '../findings/finding.tsx'
import { useHand } from '../shell/in-hand.ts'
import type { Arranged } from '../worker/arranging.ts'
import type { Preview } from '../worker/service.ts'

type Tried = { readonly number: number; readonly edits: readonly Edit[]; readonly preview?: Preview }

/** Arrangements side by side; each is tried on the whole car before it is taken. */
export function ArrangementsTable({
  found,
  plan,
  away,
  taken,
}: {
  readonly found: Arranged
  readonly plan: ArrangingPlan
  readonly away: boolean
  readonly taken: () => void
}) {
  const { conversion } = useHand(),
    [tried, setTried] = useState<Tried>()
  const preview = async (number: number): Promise<void> => {
    const one = found.arrangements[number - 1]
    if (!one) return
    const edits = await conversion.arrangementEdits(plan, one)
    setTried({ number, edits })
    const made = await conversion.preview(edits)
    setTried(t => (t?.edits === edits ? { ...t, preview: made } : t))
  }
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label="Arrangements side by side">
        <table className="many arrangements">
          <thead>
            <tr>
              <th scope="col">No.</th>
              <th scope="col">
                <span className="hidden">Try</span>
              </th>
              {ARRANGEMENT_HEADS.map(([key, head]) => (
                <th key={key} scope="col">
                  {head}
                </th>
              ))}
              <th scope="col">where, and what it is best in</th>
            </tr>
          </thead>
          <tbody>
            {found.view.arrangements.map(a => (
              <Row
                key={a.number}
                words={a}
                trying={tried?.number === a.number && !tried.preview}
                away={away}
                preview={() => void preview(a.number)}
              />
            ))}
          </tbody>
        </table>
      </div>
      {tried?.preview ? (
        <>
          <h3>Arrangement {tried.number} on the whole car</h3>
          <PreviewView
            preview={tried.preview}
            take={() => {
              setTried(undefined)
              void conversion.edit(tried.edits, 'battery arranged').then(issues => (issues[0] ? conversion.say(issues[0].what) : taken()))
            }}
            leave={() => setTried(undefined)}
          />
        </>
      ) : null}
    </>
  )
}

function Row({
  words: a,
  trying,
  away,
  preview,
}: {
  readonly words: ArrangementWords
  readonly trying: boolean
  readonly away: boolean
  readonly preview: () => void
}) {
  return (
    <tr>
      <th scope="row">{a.number}</th>
      <td>
        <button
          type="button"
          disabled={away}
          aria-disabled={trying}
          aria-label={`Preview arrangement ${a.number}`}
          onClick={() => trying || preview()}
        >
          {trying ? 'Trying …' : 'Preview'}
        </button>
      </td>
      {ARRANGEMENT_HEADS.map(([key]) => (
        <td key={key} className={key === 'margin' && a.overloaded ? 'num failing' : 'num'}>
          {key === 'margin' && a.overloaded ? '▲ ' : ''}
          {a[key]}
        </td>
      ))}
      <td className="where">
        {a.boxes.join(', ')}
        {a.best ? <span className="quiet"> · {a.best}</span> : null}
      </td>
    </tr>
  )
}
