import { type LotView, MARKS, type ModuleView, type SheetGroup } from '@ampwright/workbench'
import { Field } from '../field/field.tsx'
import { fieldIn } from '../field/map-at.ts'
import { useHand } from '../shell/in-hand.ts'

const COLUMNS = [
  ['serial', 'Serial number'],
  ['capacity', 'Capacity'],
  ['resistance', 'Resistance, 10 s'],
  ['rest-voltage', 'Rest voltage'],
  ['rest-voltage-later', 'Rest voltage later'],
  ['days-apart', 'Days apart'],
  ['insulation', 'Insulation'],
  ['place', 'Place'],
  ['use', 'Use'],
  ['source', 'Where from'],
  ['history', 'History'],
] as const

/** Every module with every reading as a field, what follows from them, and the verdict. */
export function ModuleTable({ modules, lot }: { readonly modules: readonly SheetGroup[]; readonly lot: LotView | undefined }) {
  const views = new Map(lot?.modules.map(m => [m.name, m]))
  return (
    <section className="scroll" aria-label="Salvaged modules, one row each" tabIndex={0}>
      <table className="many bench">
        <thead>
          <tr>
            <th scope="col" className="stays">
              Module
            </th>
            <th scope="col">Verdict</th>
            {COLUMNS.slice(0, 7).map(([key, label]) => (
              <th scope="col" key={key}>
                {label}
              </th>
            ))}
            <th scope="col">Health</th>
            <th scope="col">Self-discharge, 30 days</th>
            {COLUMNS.slice(7).map(([key, label]) => (
              <th scope="col" key={key}>
                {label}
              </th>
            ))}
            <th scope="col">
              <span className="hidden">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {modules.map(m => (
            <Row key={m.path} module={m} view={views.get(m.key)} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Row({ module, view }: { readonly module: SheetGroup; readonly view: ModuleView | undefined }) {
  const { conversion } = useHand()
  const cell = ([key, label]: (typeof COLUMNS)[number]) => {
    const field = fieldIn(module, key)
    return <td key={key}>{field ? <Field field={field} inline labelled={`${label} of ${module.key}`} /> : null}</td>
  }
  return (
    <tr id={`at-${module.path}`}>
      <th scope="row" className="stays">
        {module.key} {view ? <Mark view={view} /> : null}
      </th>
      <td className="verdict">{view ? <Verdict view={view} path={module.path} /> : <span className="quiet">…</span>}</td>
      {COLUMNS.slice(0, 7).map(cell)}
      <Followed opened={view?.health} what={`Health of ${module.key}`} />
      <Followed opened={view?.leak} what={`Self-discharge of ${module.key}`} />
      {COLUMNS.slice(7).map(cell)}
      <td>
        <button
          type="button"
          className="bare small"
          onClick={() => void conversion.edit([{ path: module.path, now: null }], `module ${module.key} taken out`)}
          aria-label={`Take out module ${module.key}`}
        >
          take out
        </button>
      </td>
    </tr>
  )
}

const Mark = ({ view }: { readonly view: ModuleView }) => (
  <span className={view.outcome} aria-hidden="true">
    {MARKS[view.outcome]}
  </span>
)

/** The verdict in words, what it comes from, and what can be done about it here. */
function Verdict({ view, path }: { readonly view: ModuleView; readonly path: string }) {
  const { conversion } = useHand()
  return (
    <>
      <b className={view.outcome}>
        {MARKS[view.outcome]} {view.verdict}
      </b>
      {view.outcome === 'failing' ? <span className="small"> because</span> : null}
      {view.because.length ? (
        <span className="small why">{view.outcome === 'unanswered' ? view.because.join('; ') : view.because.join(' ')}</span>
      ) : null}
      {view.outcome === 'failing' ? (
        <button
          type="button"
          className="small"
          onClick={() => void conversion.edit([{ path: `${path}.use`, now: 'rejected' }], `module ${view.name} put aside`)}
          aria-label={`Put aside module ${view.name}`}
        >
          Put aside
        </button>
      ) : null}
    </>
  )
}

function Followed({ opened, what }: { readonly opened: ModuleView['health']; readonly what: string }) {
  const { openWorking } = useHand()
  return (
    <td className="followed">
      {opened ? (
        <button type="button" className="num" onClick={() => openWorking(opened.name)} aria-label={`Working of ${what}, ${opened.text}`}>
          {opened.text}
        </button>
      ) : (
        <span className="quiet">–</span>
      )}
    </td>
  )
}
