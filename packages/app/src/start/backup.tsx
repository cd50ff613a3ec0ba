import { useEffect, useRef, useState } from 'react'
import { api } from '../server/api.ts'
import { forgetCounts } from '../server/last-seen.ts'

/** Everything as one file, and a backup in the place of everything. */
export function Backup({ renew }: { readonly renew: () => Promise<unknown> }) {
  const [asked, setAsked] = useState<File>(),
    [said, setSaid] = useState<{ readonly wrong: boolean; readonly says: string }>()
  const putBack = async (file: File): Promise<void> => {
    setAsked(undefined)
    setSaid({ wrong: false, says: 'Putting it back …' })
    try {
      const { keptAs } = await api.restoreBackup(file)
      await forgetCounts()
      await renew()
      setSaid({ wrong: false, says: `${file.name} is put back. What was here before is kept in the data folder as ${keptAs}.` })
    } catch (e) {
      setSaid({ wrong: true, says: `${file.name}: ${(e as Error).message}` })
    }
  }
  return (
    <>
      <div className="add">
        <a className="button" href={api.backup} download>
          Everything as one file
        </a>
        <label className="button">
          Put a backup back
          <input
            className="hidden"
            type="file"
            accept=".sqlite"
            onChange={e => {
              setAsked(e.target.files?.[0])
              setSaid(undefined)
              e.target.value = ''
            }}
          />
        </label>
      </div>
      {asked ? <Ask file={asked} put={() => void putBack(asked)} leave={() => setAsked(undefined)} /> : null}
      {said ? (
        <div className={`note${said.wrong ? ' bad' : ''}`} role={said.wrong ? 'alert' : 'status'}>
          {said.says}
        </div>
      ) : null}
    </>
  )
}

/** Asked once: everything there is gives way. */
function Ask({ file, put, leave }: { readonly file: File; readonly put: () => void; readonly leave: () => void }) {
  const first = useRef<HTMLButtonElement>(null)
  useEffect(() => first.current?.focus(), [])
  return (
    <div className="note" role="group" aria-label="Put a backup back">
      <p>
        <b>{file.name}</b> takes the place of every conversion with all its revisions and files. What is here now is kept aside as a file in
        the data folder, which can be put back the same way.
      </p>
      <button type="button" className="main" onClick={put} ref={first}>
        Put it in the place of everything
      </button>{' '}
      <button type="button" onClick={leave}>
        Leave it as it is
      </button>
    </div>
  )
}
