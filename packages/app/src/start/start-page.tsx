import type { ApiConversionLine, ApiMaking } from '@ampwright/server'
import { useState } from 'react'
import { Link, useLocation } from 'wouter'
import { api } from '../server/api.ts'
import { TourAgain } from '../tour/tour-again.tsx'
import { Backup } from './backup.tsx'
import { ConversionRow, type Doing } from './conversion-row.tsx'
import { useConversions } from './conversions.ts'
import { TakeIn } from './take-in.tsx'
import { day } from './when.ts'

/** Every conversion there is with its state, how to begin another, and what leaves and comes back. */
export function StartPage() {
  const { list, counts, samples, away, wrong, jobs, renew } = useConversions(),
    [said, setSaid] = useState<string>(),
    [failed, setFailed] = useState<string>(),
    [, go] = useLocation()
  const trying = async (work: () => Promise<string | undefined>): Promise<void> => {
    try {
      setFailed(undefined)
      setSaid(await work())
    } catch (e) {
      setFailed((e as Error).message)
    }
    await renew()
  }
  const begin = async (body: ApiMaking): Promise<void> =>
    trying(async () => {
      go(`/c/${(await api.create(body)).id}/brief`)
      return undefined
    })
  return (
    <main className="start">
      <h1>Ampwright</h1>
      <p className="lede">
        A workbench for converting petrol and diesel cars to battery-electric drive. It informs; it does not approve. High voltage kills:
        leave work on it to those qualified for it.
      </p>
      {(failed ?? wrong) ? (
        <div className="note bad" role="alert">
          {failed ?? wrong}
        </div>
      ) : null}
      <p>
        <Link href="/handbook">Handbook</Link>{' '}
        <span className="quiet">Every formula alone, with its source, to be worked with your own numbers.</span>
      </p>
      <p>
        <Link href="/shelf">Shelf of parts</Link>{' '}
        <span className="quiet">What the workshop owns or was offered: serial numbers, prices, and for which car it is kept.</span>
      </p>
      <h2>Conversions</h2>
      {list === undefined ? <p>Looking …</p> : null}
      {list?.length === 0 && !wrong ? <p>None yet.</p> : null}
      <ul className="conversions">
        {list?.map(c => (
          <ConversionRow
            key={c.id}
            line={c}
            origin={list.find(o => o.id === c.variant?.of)?.name}
            counts={counts.get(c.id)}
            away={away}
            act={what => void trying(async () => done(what, c))}
          />
        ))}
      </ul>
      <p role="status" className="small">
        {said}
      </p>
      {away || list === undefined ? null : (
        <>
          <h2>Begin</h2>
          <div className="add">
            <Link href="/new" className="button main">
              A new conversion
            </Link>
            {samples.map(s => (
              <button type="button" key={s.sample} onClick={() => void begin({ sample: s.sample })}>
                From the sample {s.name}
              </button>
            ))}
          </div>
          <TourAgain />
          <h2>Take in</h2>
          <TakeIn renew={renew} />
        </>
      )}
      <Backup renew={renew} jobs={jobs} away={away || list === undefined} />
    </main>
  )
}

/** Does it, and says what was done. */
async function done(what: Doing, { id, name }: ApiConversionLine): Promise<string> {
  const called = name || 'The car without a name'
  if (what === 'duplicate') {
    await api.create({ copyOf: id })
    return `${called} is there twice now; the copy has its own revisions.`
  }
  if (what === 'bring back') {
    await api.undelete(id)
    return `${called} is back.`
  }
  const { deletedUntil } = await api.remove(id)
  return `${called} is deleted${deletedUntil === null ? '' : `; it can be brought back until ${day(deletedUntil)}`}.`
}
