import type { Clash } from '../server/api.ts'
import { useInHand } from './in-hand.ts'

/** What the person must know before going on: what could not be read, what clashed, what the server said. */
export function Notices() {
  const { conversion, opened } = useInHand()
  return (
    <>
      {opened.unreadable.length ? (
        <div className="note bad" role="alert">
          <b>This text cannot be assessed until it is mended:</b>
          <ul>
            {opened.unreadable.slice(0, 20).map(i => (
              <li key={`${i.line} ${i.path} ${i.what}`}>
                line {i.line}, {i.path}: {i.what}; found {i.found}
                {i.accepted ? `; accepted ${i.accepted}` : ''}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {opened.said === undefined ? null : (
        <div className="note bad" role="alert">
          {opened.said}{' '}
          <button type="button" className="bare" onClick={() => conversion.hush()}>
            Put away
          </button>
        </div>
      )}
      {opened.clashes.map(c => (
        <div className="note bad" role="alert" key={c.path}>
          <b title={c.path}>{opened.called[c.path] ?? c.path}</b> was changed elsewhere meanwhile. Yours:{' '}
          <span className="num">{said(c.yours)}</span>; theirs: <span className="num">{said(c.theirs)}</span>.{' '}
          <button type="button" onClick={() => conversion.settle(c, true)}>
            Take mine
          </button>{' '}
          <button type="button" onClick={() => conversion.settle(c, false)}>
            Keep theirs
          </button>
        </div>
      ))}
    </>
  )
}

/** A value of the file in one line; a whole group as its text. */
const said = (v: Clash['yours']): string => (v === null ? 'nothing' : typeof v === 'string' ? v : JSON.stringify(v))
