import type { ConceptsView } from '@ampwright/workbench'

/** Concepts side by side: what each comes to, what it does to the car, what the rule set says, and whether it is worth it. */
export function ConceptsTable({ view: v, take }: { readonly view: ConceptsView; readonly take: (id: string) => void }) {
  return (
    <>
      <div className={`note ${v.worth === 'not worth converting' ? 'bad' : ''}`} role="status">
        {v.verdict.map((line, i) => (i === 0 ? <b key={line}>{line}</b> : <p key={line}>{line}</p>))}
        {[...v.asked, ...v.skipped].map(line => (
          <p key={line} className="small">
            {line}
          </p>
        ))}
      </div>
      {v.concepts.length ? (
        <div className="scroll" tabIndex={0} role="region" aria-label="Concepts side by side">
          <table className="many concepts">
            <thead>
              <tr>
                <td />
                {v.concepts.map(c => (
                  <th key={c.id} scope="col">
                    {c.title}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {v.rows.map(r => (
                <tr key={r.label}>
                  <th scope="row">{r.label}</th>
                  {r.cells.map((cell, i) => (
                    <td key={v.concepts[i]?.id}>{cell}</td>
                  ))}
                </tr>
              ))}
              <tr>
                <th scope="row">What it does to the car</th>
                {v.concepts.map(c => (
                  <td key={c.id}>
                    {c.alters.map(a => (
                      <p key={a}>{a}</p>
                    ))}
                  </td>
                ))}
              </tr>
              <tr>
                <th scope="row">What stands in the way</th>
                {v.concepts.map(c => (
                  <td key={c.id}>
                    {c.failing.length ? c.failing.map(a => <p key={a}>{a}</p>) : 'nothing that can hurt people or cost dearly'}
                    {c.open.map(a => (
                      <p key={a} className="quiet">
                        {a}
                      </p>
                    ))}
                  </td>
                ))}
              </tr>
              <tr>
                <th scope="row">
                  <span className="hidden">Choose</span>
                </th>
                {v.concepts.map(c => (
                  <td key={c.id}>
                    <button type="button" className="main" onClick={() => take(c.id)}>
                      Go on with this
                    </button>
                  </td>
                ))}
              </tr>
            </tbody>
          </table>
        </div>
      ) : null}
      {v.rules.length ? (
        <details className="group">
          <summary>What the rule set says before a part is bought</summary>
          {v.rules.map(r => (
            <p key={r} className="small">
              {r}
            </p>
          ))}
        </details>
      ) : null}
      <p className="quiet small">{v.told} The hours are one band for every concept (common practice).</p>
    </>
  )
}
