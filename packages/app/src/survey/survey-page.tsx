import type { SurveyGroup, SurveySheet } from '@ampwright/workbench'
import { useEffect, useRef, useState } from 'react'
import { useInHand } from '../shell/in-hand.ts'
import { headed } from '../text/headed.ts'
import { MeasureRow } from './measure-row.tsx'

type Shown = 'all' | 'missing' | 'in hand'
const SHOWN: Readonly<Record<Shown, string>> = {
  all: 'everything',
  missing: 'only what is missing',
  'in hand': 'only what is worth knowing better',
}

/** What to measure, with what and until when, to fill in here or to print and write into. Rows stay where they stand while somebody fills them in. */
export function SurveyPage() {
  const { conversion, opened } = useInHand(),
    [sheet, setSheet] = useState<SurveySheet>(),
    [shown, setShown] = useState<Shown>('all'),
    held = useRef<SurveySheet>(undefined)
  const take = (s: SurveySheet): void => {
    held.current = s
    setSheet(s)
  }
  useEffect(() => {
    if (opened.told) void conversion.survey(held.current).then(take)
  }, [conversion, opened.told])
  const groups = (sheet ?? []).map(g => ({ ...g, rows: g.rows.filter(r => shown === 'all' || (shown === 'missing') === r.missing) })),
    filled = (sheet ?? []).flatMap(g => g.rows).filter(r => r.done).length
  return (
    <div className="survey">
      <h1>Survey sheet</h1>
      <p className="lede">
        What to measure, with what, how well and until when. In each group what nobody has yet comes first, then what narrows range, mass
        and cost most. Fill it in here, or print it and write into the boxes.
      </p>
      <p className="car-line">{opened.name || 'A car without a name yet'}</p>
      <div className="bar">
        <label className="small">
          Show{' '}
          <select value={shown} onChange={e => setShown(e.target.value as Shown)}>
            {Object.entries(SHOWN).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </label>
        {filled ? (
          <button type="button" onClick={() => void conversion.survey().then(take)}>
            Put away {filled} filled in, rank anew
          </button>
        ) : null}
        <button type="button" onClick={() => print()} disabled={sheet === undefined}>
          Print
        </button>
      </div>
      {sheet === undefined ? <p>Being worked out …</p> : null}
      {sheet?.length === 0 ? <p>Nothing is missing, and nothing widens a headline figure.</p> : null}
      {groups.map(g => (
        <Group key={g.until} group={g} />
      ))}
      <p className="quiet small">
        A band is narrowed to first order, everything else as it stands; the value itself may move as well. Tools, accuracies and times are
        common practice.
      </p>
    </div>
  )
}

function Group({ group: { until, rows } }: { readonly group: SurveyGroup }) {
  if (rows.length === 0) return null
  const missing = rows.filter(r => r.missing && !r.done).length
  return (
    <section aria-label={headed(until)}>
      <h2>
        {headed(until)} <span className="small">{missing ? `◌ ${missing} missing` : ''}</span>
      </h2>
      <ol className="measures">
        {rows.map(r => (
          <MeasureRow key={r.path} row={r} />
        ))}
      </ol>
    </section>
  )
}
