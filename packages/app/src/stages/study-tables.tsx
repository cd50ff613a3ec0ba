import type { TableView } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { useHand, useOf } from '../shell/in-hand.ts'

/** Tables of studies, folded; each number opens its working. */
export function StudyTables({ ids }: { readonly ids: readonly string[] }) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    [tables, setTables] = useState<readonly TableView[]>([])
  useEffect(() => {
    if (told) void conversion.tables(ids).then(setTables)
  }, [conversion, told, ids])
  return (
    <>
      {tables.map(t => (
        <details className="group" key={t.id}>
          <summary>
            {t.label} <span className="quiet small">{t.rows.length}</span>
          </summary>
          <StudyTable table={t} />
        </details>
      ))}
    </>
  )
}

/** One table: in columns where the page is wide, row by row on a phone. */
function StudyTable({ table: { label, columns, rows } }: { readonly table: TableView }) {
  const { openWorking } = useHand()
  return (
    <div className="scroll">
      <table className="many study" aria-label={label}>
        <thead>
          <tr>
            <td />
            {columns.map(c => (
              <th scope="col" key={c.key}>
                {c.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(r => (
            <tr key={r.name}>
              <th scope="row">{r.name}</th>
              {columns.map((c, i) => {
                const cell = r.cells[i]
                if (cell === undefined || cell.text === '') return <td key={c.key} className="empty" />
                const { text, name } = cell
                return (
                  <td key={c.key} data-label={c.label} className={c.number ? 'num' : undefined}>
                    {name === undefined ? (
                      text
                    ) : (
                      <button
                        type="button"
                        className="num"
                        onClick={() => openWorking(name)}
                        aria-label={`Working of ${r.name}, ${c.label}: ${text}`}
                      >
                        {text}
                      </button>
                    )}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
