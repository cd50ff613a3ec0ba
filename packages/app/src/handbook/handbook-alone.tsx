import type { System } from '@ampwright/conversion'
import { useEffect, useState } from 'react'
import { Link } from 'wouter'
import { storedUnits } from '../opened.ts'
import { startAlone } from '../worker/engine.ts'
import { Book } from './book.tsx'
import { type Handbook, handbookOf } from './handbook.ts'

/** The handbook without a conversion, with an engine of its own. */
export function HandbookAlone({ formula }: { readonly formula?: string | undefined }) {
  const [handbook, setHandbook] = useState<Handbook>(),
    [system, setSystem] = useState<System>(storedUnits())
  useEffect(() => {
    const { engine, stop } = startAlone()
    setHandbook(handbookOf(engine))
    return stop
  }, [])
  return (
    <main style={{ margin: '0 auto' }}>
      <div className="bar">
        <Link href="/">Ampwright</Link>
        <span className="grow" />
        <label className="small">
          Units{' '}
          <select value={system} onChange={e => setSystem(e.target.value as System)}>
            <option value="metric">metric</option>
            <option value="us">US</option>
            <option value="uk">UK</option>
          </select>
        </label>
      </div>
      <h1>Handbook</h1>
      {handbook === undefined ? (
        <p>Opening …</p>
      ) : (
        <Book handbook={handbook} at="/handbook" system={system} ready {...(formula === undefined ? {} : { formula })} />
      )}
    </main>
  )
}
