import { type FilePlace, placeEdits, scanEdits, tripEdits } from '@ampwright/workbench'
import { useId, useState } from 'react'
import { wrongText } from '../field/field.tsx'
import { useInHand } from '../shell/in-hand.ts'

const NEW_TRIP = 'a new trip'
const NEW_SCAN = 'a new scan of the car'

/** Names a file at one of the places that take it, or begins a trip along it. */
export function PutToUse({
  name,
  formats,
  places,
}: {
  readonly name: string
  readonly formats: readonly string[]
  readonly places: readonly FilePlace[]
}) {
  const { conversion, opened } = useInHand(),
    [at, setAt] = useState(''),
    [trip, setTrip] = useState(''),
    [said, setSaid] = useState<string>(),
    [done, setDone] = useState<string>(),
    id = useId()
  const fitting = places.filter(p => p.formats.some(f => formats.includes(f)) && p.now !== name),
    mayTravel = tripEdits('x', name, formats).length > 0,
    isScan = scanEdits('x', name, formats).length > 0
  if (fitting.length === 0 && !mayTravel && !isScan) return null
  const put = async (): Promise<void> => {
    const place = fitting.find(p => p.path === at),
      key = trip.trim()
    if (!place && at !== NEW_TRIP && at !== NEW_SCAN) return setSaid('choose a place that takes it')
    if (!place && key === '')
      return setSaid(isScan ? 'a name for the scan is wanted, such as engine-bay' : 'a name for the trip is wanted, such as commute')
    const edits = place ? placeEdits(place, name) : isScan ? scanEdits(key, name, formats) : tripEdits(key, name, formats)
    if (!place && places.some(p => p.path.startsWith(`trips.named.${key}.`))) return setSaid(`there is a trip ${key} already`)
    if (!place && isScan && places.some(p => p.path === `fit.scans.${key}.file`)) return setSaid(`there is a scan ${key} already`)
    const issues = await conversion.edit(edits, `${name} put to use at ${place?.path ?? (isScan ? `scan ${key}` : `trip ${key}`)}`)
    setSaid(issues[0] ? wrongText(issues[0]) : undefined)
    if (issues[0]) return
    setDone(
      place
        ? `In use at ${place.label}.`
        : isScan
          ? `The scan ${key} is shown on the page Fit; pick three points on it there, so that it lies in the car.`
          : `The trip ${key} drives along it; what it still asks stands on the page Pack, trips and charging.`,
    )
    setAt('')
  }
  return (
    <form
      className="add"
      onSubmit={e => {
        e.preventDefault()
        void put()
      }}
    >
      <label htmlFor={id}>Put to use</label>
      <select id={id} value={at} onChange={e => setAt(e.target.value)}>
        <option value="">where?</option>
        {mayTravel ? <option>{NEW_TRIP}</option> : null}
        {isScan ? <option>{NEW_SCAN}</option> : null}
        {fitting.map(p => (
          <option key={p.path} value={p.path}>
            {p.label}
            {p.now ? ` (in place of ${p.now})` : ''}
          </option>
        ))}
      </select>
      {at === NEW_TRIP || at === NEW_SCAN ? (
        <input
          aria-label={at === NEW_SCAN ? 'Name of the new scan' : 'Name of the new trip'}
          placeholder="its name"
          value={trip}
          onChange={e => setTrip(e.target.value)}
        />
      ) : null}
      <button type="submit" disabled={opened.saving === 'server away'}>
        Use it
      </button>
      {done ? <span role="status">{done}</span> : null}
      {said ? (
        <span className="field wrong">
          <span className="error" role="alert">
            {said}
          </span>
        </span>
      ) : null}
    </form>
  )
}
