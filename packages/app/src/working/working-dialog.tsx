import type { WorkingBranch, WorkingView } from '@ampwright/workbench'
import { useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import { useHand, useInHand } from '../shell/in-hand.ts'

/** The working of a number as a hand calculation that unfolds down to what was typed. */
export function WorkingDialog({ name, close }: { readonly name: string; readonly close: () => void }) {
  const { conversion } = useHand(),
    dialog = useRef<HTMLDialogElement>(null),
    [copied, setCopied] = useState(false)
  useEffect(() => dialog.current?.showModal(), [])
  return (
    <dialog
      className="working"
      ref={dialog}
      onClose={close}
      aria-label="Working"
      onClick={e => e.target === dialog.current && dialog.current?.close()}
    >
      <div className="bar">
        <h1>How it came about</h1>
        <span className="grow" />
        <button
          type="button"
          onClick={() => void conversion.workingText(name).then(t => navigator.clipboard.writeText(t ?? '').then(() => setCopied(true)))}
        >
          {copied ? 'Copied' : 'Copy as text'}
        </button>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <ul className="work">
        <Node name={name} depth={0} />
      </ul>
    </dialog>
  )
}

function Node({ name, depth, branch }: { readonly name: string; readonly depth: number; readonly branch?: WorkingBranch }) {
  const { conversion, opened } = useInHand(),
    [open, setOpen] = useState(depth < 1),
    [view, setView] = useState<WorkingView>()
  useEffect(() => {
    if (open || branch === undefined) void conversion.working(name).then(setView)
  }, [conversion, name, open, branch, opened.told])
  const label = view?.label ?? branch?.label ?? name,
    symbol = view?.symbol ?? branch?.symbol ?? ''
  return (
    <li>
      <button
        type="button"
        className="turn"
        aria-expanded={open}
        aria-label={`${open ? 'Fold' : 'Unfold'} ${label}`}
        onClick={() => setOpen(!open)}
      >
        {open ? '−' : '+'}
      </button>
      <b>
        {symbol ? `${symbol} = ` : ''}
        {view?.value ?? branch?.value ?? '…'}
      </b>{' '}
      <span className="o">
        {label}
        {branch?.how && !open ? ` · ${branch.how}` : ''}
      </span>
      {open && view ? <Inside view={view} depth={depth} /> : null}
    </li>
  )
}

function Inside({ view: v, depth }: { readonly view: WorkingView; readonly depth: number }) {
  const { opened } = useInHand()
  return (
    <div style={{ marginLeft: 22 }}>
      {v.formula ? (
        <>
          <div className="o">
            <Link
              href={`/c/${opened.id}/handbook/${v.formula.id}?figure=${encodeURIComponent(v.name)}`}
              onClick={e => e.currentTarget.closest('dialog')?.close()}
            >
              {v.formula.label}
            </Link>
          </div>
          <div className="text">{v.formula.text.join('\n')}</div>
          {v.formula.numbers ? <div className="text">{v.formula.numbers}</div> : null}
          <div className="o">
            {v.formula.source}
            {v.formula.leavesOut ? ` · Leaves out: ${v.formula.leavesOut}` : ''}
          </div>
        </>
      ) : (
        <div className="o">
          {v.typed ? `«${v.typed}» ` : ''}
          {v.origin}
          {v.path ? ` · ${v.path}` : ''}
        </div>
      )}
      {v.read ? <div className="o">{v.read}</div> : null}
      {v.beyond.map(b => (
        <div key={b} className="failing">
          ▲ {b} lies outside the range in which this formula holds
        </div>
      ))}
      {v.inputs.length ? (
        <ul>
          {v.inputs.map(i => (
            <Node key={i.name} name={i.name} depth={depth + 1} branch={i} />
          ))}
        </ul>
      ) : null}
    </div>
  )
}
