import type { FileBeside } from '@ampwright/workbench'

/** What a file reads as, and why not as the other formats. */
export function Holds({ file }: { readonly file: Pick<FileBeside, 'fits' | 'others' | 'fault'> }) {
  return (
    <>
      {file.fault ? (
        <p className="failing">
          ▲ {file.fault.place}: {file.fault.what}; found {file.fault.found}; accepted {file.fault.accepted}.
        </p>
      ) : null}
      {file.fits.length ? (
        <ul className="plain">
          {file.fits.map(f => (
            <li key={f.format}>
              Reads as <b>{f.format}</b>: {f.says}.
            </li>
          ))}
        </ul>
      ) : null}
      {file.fits.length && file.others.length ? (
        <details className="group">
          <summary>Why not as the others</summary>
          <ul className="plain small">
            {file.others.map(o => (
              <li key={o.format}>
                {o.format}: found {o.found}; accepted {o.accepted}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </>
  )
}

export const sizeText = (bytes: number): string =>
  bytes < 1000 ? `${bytes}\u202fB` : bytes < 1e6 ? `${Math.round(bytes / 1000)}\u202fkB` : `${(bytes / 1e6).toFixed(1)}\u202fMB`
