import type { FileBeside, FilePlace, TripRoute } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { RouteDrawing } from '../route/route-drawing.tsx'
import { useInHand } from '../shell/in-hand.ts'
import { Holds, sizeText } from './holds.tsx'
import { NewFile } from './new-file.tsx'
import { PutToUse } from './put-to-use.tsx'

type Beside = { readonly files: readonly FileBeside[]; readonly places: readonly FilePlace[]; readonly routes: readonly TripRoute[] }

/** The files beside a conversion: what they hold, where they count, and the routes trips drive along. */
export function FilesPage() {
  const { conversion, opened } = useInHand(),
    [beside, setBeside] = useState<Beside>()
  useEffect(() => {
    void conversion.files().then(setBeside)
  }, [conversion, opened.told, opened.renewing])
  return (
    <>
      <h1>Files and routes</h1>
      <p className="lede">
        Tables, tracks and scans that stand beside the conversion: speed traces, curves of cells and motors, charge tables, routes, scanned
        spaces. A file counts where the conversion names it.
      </p>
      <NewFile names={beside?.files.map(f => f.name) ?? []} places={beside?.places ?? []} />
      <section aria-label="Files beside the conversion">
        <h2>Beside the conversion</h2>
        {beside === undefined ? <p>Looking …</p> : null}
        {beside?.files.length === 0 ? <p>No file yet.</p> : null}
        {beside?.files.map(f => (
          <Listed key={f.name} file={f} places={beside.places} />
        ))}
      </section>
      <section aria-label="Routes in use">
        <h2>Routes trips drive along</h2>
        {beside?.routes.length === 0 ? <p>No trip drives along a track. Put a GPX file to use as the track of a trip.</p> : null}
        {beside?.routes.map(r =>
          r.route ? (
            <RouteDrawing key={r.trip} route={r.route} title={`Trip ${r.trip}: ${r.route.name ?? r.track}`} />
          ) : (
            <p key={r.trip} className="failing">
              ▲ Trip {r.trip}: {r.missing}.
            </p>
          ),
        )}
      </section>
    </>
  )
}

/** Takes a file away that is in use nowhere; earlier revisions keep it. */
function TakeAway({ name }: { readonly name: string }) {
  const { conversion, opened } = useInHand(),
    [said, setSaid] = useState<string>()
  return (
    <p>
      <button
        type="button"
        disabled={opened.saving === 'server away'}
        onClick={() => void conversion.addFile(name, null).then(setSaid)}
        aria-label={`Take away ${name}`}
      >
        Take away
      </button>{' '}
      <span className="small quiet">Earlier revisions keep it.</span>
      {said ? (
        <span className="failing" role="alert">
          {' '}
          ▲ {said}
        </span>
      ) : null}
    </p>
  )
}

function Listed({ file, places }: { readonly file: FileBeside; readonly places: readonly FilePlace[] }) {
  return (
    <details className="group file">
      <summary>
        <span className="num">{file.name}</span>{' '}
        <span className="quiet small">
          {sizeText(file.size)}, {file.fits.map(f => f.format).join(' or ') || 'fits nothing'},{' '}
          {file.usedAt.length ? 'in use' : 'not in use'}
        </span>
      </summary>
      <Holds file={file} />
      {file.usedAt.map(p => (
        <p key={p.path}>
          In use at {p.label} <span className="quiet num">{p.path}</span>
        </p>
      ))}
      <PutToUse name={file.name} formats={file.fits.map(f => f.format)} places={places} />
      {file.usedAt.length ? null : <TakeAway name={file.name} />}
    </details>
  )
}
