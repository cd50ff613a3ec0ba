import type { System } from '@ampwright/conversion'
import { useEffect, useState } from 'react'
import { useInHand } from './in-hand.ts'

const SAYS = {
  saved: 'Saved',
  saving: 'Saving …',
  'not saved': 'Not saved',
  'not there': 'Nothing is open',
  'server away': 'Server away: shown is the last assessment, nothing can be changed',
} as const

/** Somebody is typing there: the keys belong to what is typed. A field of the file says what stands in it. */
const typedIn = (at: EventTarget | null): boolean =>
  at instanceof HTMLTextAreaElement || (at instanceof HTMLInputElement && !WITHOUT_TEXT.has(at.type) && at.value !== at.dataset['stands'])
const WITHOUT_TEXT: ReadonlySet<string> = new Set(['radio', 'checkbox', 'range', 'file'])

/** Undo, redo, whether it is saved, units and theme. */
export function Bar() {
  const { conversion, opened } = useInHand()
  const [units, setUnits] = useState<System>(conversion.units)
  useEffect(() => {
    const keys = (e: KeyboardEvent): void => {
      if (!(e.ctrlKey || e.metaKey) || e.altKey) return
      const key = e.key.toLowerCase()
      if (key !== 'z' && key !== 'y') return
      if (typedIn(e.target)) return
      e.preventDefault()
      if (key === 'y' || e.shiftKey) conversion.redo()
      else conversion.undo()
    }
    addEventListener('keydown', keys)
    return () => removeEventListener('keydown', keys)
  }, [conversion])
  return (
    <div className="bar">
      <button type="button" onClick={() => conversion.undo()} disabled={opened.undoable === 0}>
        Undo
      </button>
      <button type="button" onClick={() => conversion.redo()} disabled={opened.redoable === 0}>
        Redo
      </button>
      <span role="status" className="small quiet" data-saving={opened.saving}>
        {SAYS[opened.saving]}
        {opened.renewing ? ' · … renewing' : ''}
      </span>
      <span className="grow" />
      <label className="small">
        Units{' '}
        <select
          value={units}
          onChange={e => {
            const to = e.target.value as System
            setUnits(to)
            conversion.setUnits(to)
          }}
        >
          <option value="metric">metric</option>
          <option value="us">US</option>
          <option value="uk">UK</option>
        </select>
      </label>
      <ThemeChoice />
    </div>
  )
}

function ThemeChoice() {
  const [theme, setTheme] = useState(localStorage.getItem('ampwright.theme') ?? 'auto')
  useEffect(() => {
    if (theme === 'auto') delete document.documentElement.dataset['theme']
    else document.documentElement.dataset['theme'] = theme
    localStorage.setItem('ampwright.theme', theme)
  }, [theme])
  return (
    <label className="small">
      Light{' '}
      <select value={theme} onChange={e => setTheme(e.target.value)}>
        <option value="auto">as the system</option>
        <option value="light">light</option>
        <option value="dark">dark</option>
      </select>
    </label>
  )
}
