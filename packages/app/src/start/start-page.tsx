import type { ApiConversionLine, ApiMaking, ApiSample } from '@ampwright/server'
import { useCallback, useEffect, useState } from 'react'
import { Link, useLocation } from 'wouter'
import { Away, api } from '../server/api.ts'
import { allSeen } from '../server/last-seen.ts'

/** Every conversion there is, and how to begin another. */
export function StartPage() {
  const [list, setList] = useState<readonly ApiConversionLine[]>(),
    [samples, setSamples] = useState<readonly ApiSample[]>([]),
    [said, setSaid] = useState<string>(),
    [away, setAway] = useState(false),
    [, go] = useLocation()
  const renew = useCallback(async (): Promise<void> => {
    try {
      setList(await api.list())
      setSamples(await api.samples())
      setAway(false)
    } catch (e) {
      const seen = e instanceof Away ? await allSeen() : []
      setAway(seen.length > 0)
      setList(seen.map(c => ({ id: c.id, name: c.name, revision: c.revision, variant: null, made: c.at, at: c.at, deletedUntil: null })))
      setSaid(
        seen.length
          ? 'The server is away. These cars were seen in this browser; they can be looked at, and not changed.'
          : (e as Error).message,
      )
    }
  }, [])
  useEffect(() => void renew(), [renew])
  const begin = async (body: ApiMaking): Promise<void> => {
    try {
      const { id } = await api.create(body)
      go(`/c/${id}/brief`)
    } catch (e) {
      setSaid((e as Error).message)
    }
  }
  const fromFile = async (file: File | undefined): Promise<void> => {
    if (file) await begin({ text: await file.text() })
  }
  return (
    <main style={{ margin: '0 auto' }}>
      <h1>Ampwright</h1>
      <p className="lede">
        A workbench for converting petrol and diesel cars to battery-electric drive. It informs; it does not approve. High voltage kills:
        leave work on it to those qualified for it.
      </p>
      {said ? (
        <div className="note bad" role="alert">
          {said}
        </div>
      ) : null}
      <p>
        <Link href="/handbook">Handbook</Link>{' '}
        <span className="quiet">Every formula alone, with its source, to be worked with your own numbers.</span>
      </p>
      <h2>Conversions</h2>
      {list === undefined ? (
        <p>Looking …</p>
      ) : (
        <table className="figures">
          <tbody>
            {list.map(c => (
              <tr key={c.id}>
                <td>
                  {c.deletedUntil ? <span className="quiet">{c.name}</span> : <a href={`/c/${c.id}/brief`}>{c.name || 'without a name'}</a>}
                  {c.variant ? <span className="quiet">, variant {c.variant.named}</span> : null}
                </td>
                <td className="quiet small">revision {c.revision}</td>
                <td>
                  {c.deletedUntil ? (
                    <button type="button" onClick={() => void api.undelete(c.id).then(renew)}>
                      Bring back
                    </button>
                  ) : (
                    <button
                      type="button"
                      className="bare small"
                      onClick={() => void api.remove(c.id).then(renew)}
                      aria-label={`Delete ${c.name}`}
                    >
                      delete
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {away ? null : (
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
            <label className="button">
              From a file
              <input className="hidden" type="file" accept=".yaml,.yml" onChange={e => void fromFile(e.target.files?.[0])} />
            </label>
          </div>
        </>
      )}
    </main>
  )
}
