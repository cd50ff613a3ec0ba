import type { ChangeView } from '@ampwright/workbench'

/** Values that would change, grouped under the thing they belong to. */
export function Changes({ changes, thing }: { readonly changes: readonly ChangeView[]; readonly thing: string }) {
  return (
    <section className="scroll" aria-label="What would change" tabIndex={0}>
      <table className="many">
        <thead>
          <tr>
            <th scope="col">{thing}</th>
            <th scope="col">Value</th>
            <th scope="col">Stands</th>
            <th scope="col">Would be</th>
          </tr>
        </thead>
        <tbody>
          {changes.map(c => (
            <tr key={c.path}>
              <th scope="row">{ownerOf(c.path)}</th>
              <td>{c.label}</td>
              <td className="num">{c.was ?? <span className="quiet">nothing</span>}</td>
              <td className="num">{c.now ?? <span className="quiet">nothing</span>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
/** The name before the last key of a path. */
export const ownerOf = (path: string): string => /(?:^|\.)("(?:[^"\\]|\\.)*"|[^."]+)\.[^.]+$/.exec(path)?.[1]?.replace(/^"|"$/g, '') ?? path
