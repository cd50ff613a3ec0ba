import type { SheetGroup, SheetMap, SheetNode } from '@ampwright/workbench'
import { memo, useState } from 'react'
import { useHand } from '../shell/in-hand.ts'
import { Field, wrongText } from './field.tsx'

/** A part of the file with every field there is: rows, groups that fold, maps of named things. `told` are paths that stand in a sentence above. */
export function Sheet({ node, told }: { readonly node: SheetNode; readonly told: ReadonlySet<string> }) {
  if (node.is === 'field') return told.has(node.field.path) ? null : <Row node={node} />
  if (node.is === 'map') return <Many map={node} told={told} />
  return <Folding group={node} told={told} />
}

/** Nodes one below the other: what is stated, asked or assumed first; what may be stated besides folds away. */
export const Rows = memo(function Rows({ nodes, told }: { readonly nodes: readonly SheetNode[]; readonly told: ReadonlySet<string> }) {
  const besides = nodes.filter(n => filled(n) === 0 && open(n) === 0 && (n.is === 'field' ? n.field.stands === undefined : n.is === 'map'))
  return (
    <div className="rows">
      {nodes
        .filter(n => !besides.includes(n))
        .map(n => (
          <Sheet key={n.is === 'field' ? n.field.path : n.path} node={n} told={told} />
        ))}
      {besides.length ? (
        <details className="group">
          <summary className="quiet">{besides.length} more that may be stated</summary>
          {besides.map(n => (
            <Sheet key={n.is === 'field' ? n.field.path : n.path} node={n} told={told} />
          ))}
        </details>
      ) : null}
    </div>
  )
})

function Row({ node: { field } }: { readonly node: Extract<SheetNode, { is: 'field' }> }) {
  return (
    <div className="row" id={`at-${field.path}`}>
      <span className="label">
        {field.label}
        {field.unlocks.length ? <span className="unanswered"> ◌</span> : null}
        {field.says || field.measure || (field.until && field.until !== 'any time') ? (
          <span className="help">
            {[
              field.says,
              field.unlocks.length && field.measure ? `${field.measure.tool}, ${field.measure.accuracy}, ${field.measure.minutes} min` : '',
              field.unlocks.length && field.until && field.until !== 'any time' ? field.until : '',
            ]
              .filter(Boolean)
              .join(' · ')}
          </span>
        ) : null}
      </span>
      <Field field={field} />
    </div>
  )
}

const filled = (n: SheetNode): number =>
  n.is === 'field' ? (n.field.text === undefined ? 0 : 1) : (n.is === 'group' ? n.children : n.rows).reduce((s, c) => s + filled(c), 0)
const open = (n: SheetNode): number =>
  n.is === 'field'
    ? n.field.unlocks.length && n.field.text === undefined
      ? 1
      : 0
    : (n.is === 'group' ? n.children : n.rows).reduce((s, c) => s + open(c), 0)

function Folding({ group, told }: { readonly group: SheetGroup; readonly told: ReadonlySet<string> }) {
  const gaps = open(group)
  return (
    <details className="group" id={`at-${group.path}`}>
      <summary>
        {group.label} <span className="quiet small">{filled(group) || 'nothing'} stated</span>
        {gaps ? <span className="unanswered small"> ◌ {gaps} asked</span> : null}
      </summary>
      {group.says ? <p className="quiet small">{group.says}</p> : null}
      <Rows nodes={group.children} told={told} />
    </details>
  )
}

function Many({ map, told }: { readonly map: SheetMap; readonly told: ReadonlySet<string> }) {
  const gaps = open(map)
  return (
    <details className="group" id={`at-${map.path}`} open={map.rows.length > 0 && map.rows.length <= 3}>
      <summary>
        {map.label}{' '}
        <span className="quiet small">
          {map.rows.length === 0 ? 'none' : map.rows.length === 1 ? `one ${map.entry}` : `${map.rows.length}`}
        </span>
        {gaps ? <span className="unanswered small"> ◌ {gaps} asked</span> : null}
      </summary>
      {map.says ? <p className="quiet small">{map.says}</p> : null}
      {map.rows.map(row => (
        <Entry key={row.is === 'field' ? row.field.path : row.path} row={row} entry={map.entry} told={told} />
      ))}
      <Add map={map} />
    </details>
  )
}

function Entry({ row, entry, told }: { readonly row: SheetNode; readonly entry: string; readonly told: ReadonlySet<string> }) {
  const { conversion } = useHand(),
    path = row.is === 'field' ? row.field.path : row.path,
    key = row.is === 'field' ? row.field.key : row.key,
    [wrong, setWrong] = useState<string>()
  const takeOut = async (): Promise<void> => {
    const issues = await conversion.edit([{ path, now: null }], `${entry} ${key} taken out`, true),
      naming = issues.filter(i => i.found === `«${key}»`).map(i => i.path),
      [first] = issues
    setWrong(
      naming.length > 0
        ? `${naming.join(', ')} ${naming.length === 1 ? 'names' : 'name'} it; put something else there first`
        : first && wrongText(first),
    )
  }
  return (
    <div className="entry" id={`at-${path}`}>
      <div className="bar" style={{ marginBottom: 4 }}>
        <b>{key}</b>
        <span className="grow" />
        <button type="button" className="bare small" onClick={() => void takeOut()} aria-label={`Take out ${entry} ${key}`}>
          take out
        </button>
      </div>
      {wrong === undefined ? null : (
        <p className="field wrong">
          <span className="error" role="alert">
            It is not taken out: {wrong}
          </span>
        </p>
      )}
      {row.is === 'field' ? (
        <Field field={row.field} labelled={key} />
      ) : (
        <Rows nodes={row.is === 'group' ? row.children : row.rows} told={told} />
      )}
    </div>
  )
}

/** A new entry needs a short name, and its kind where there are several; a single value needs the value. */
export function Add({ map }: { readonly map: SheetMap }) {
  const { conversion } = useHand(),
    [key, setKey] = useState(''),
    [value, setValue] = useState(''),
    [wrong, setWrong] = useState<string>()
  const add = async (): Promise<void> => {
    const name = key.trim()
    if (name === '') return setWrong(`a name for the ${map.entry} is wanted, such as front or boot-box`)
    if (map.rows.some(r => (r.is === 'field' ? r.field.key : r.key) === name)) return setWrong(`there is a ${map.entry} ${name} already`)
    const path = `${map.path}.${/^[^."\s]+$/.test(name) ? name : JSON.stringify(name)}`
    const now = map.single ? value.trim() : map.kinds ? { [map.by as string]: value || (map.kinds[0] as string) } : {}
    const issues = await conversion.edit([{ path, now }], `${map.entry} ${name} added`)
    if (issues[0]) return setWrong(wrongText(issues[0]))
    setKey('')
    setValue('')
    setWrong(undefined)
  }
  return (
    <form
      className="add"
      onSubmit={e => {
        e.preventDefault()
        void add()
      }}
    >
      <input
        aria-label={`Name of a new ${map.entry}`}
        placeholder={`new ${map.entry}: its name`}
        value={key}
        onChange={e => setKey(e.target.value)}
      />
      {map.single ? (
        <input
          aria-label={`Value of the new ${map.entry}`}
          placeholder="its value"
          value={value}
          onChange={e => setValue(e.target.value)}
        />
      ) : null}
      {map.kinds ? (
        <select aria-label={`Kind of the new ${map.entry}`} value={value} onChange={e => setValue(e.target.value)}>
          {map.kinds.map(k => (
            <option key={k}>{k}</option>
          ))}
        </select>
      ) : null}
      <button type="submit">Add</button>
      {wrong === undefined ? null : (
        <span className="field wrong">
          <span className="error" role="alert">
            {wrong}
          </span>
        </span>
      )}
    </form>
  )
}
