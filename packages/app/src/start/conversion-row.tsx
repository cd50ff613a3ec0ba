import type { ApiConversionLine } from '@ampwright/server'
import { api } from '../server/api.ts'
import type { Counts } from '../server/last-seen.ts'
import { ago, day } from './when.ts'

export type Doing = 'duplicate' | 'delete' | 'bring back'

/** A conversion with its state and what can be done with it as a whole. */
export function ConversionRow({
  line: c,
  origin,
  counts,
  away,
  act,
}: {
  readonly line: ApiConversionLine
  /** Name of the conversion it is a variant of. */
  readonly origin: string | undefined
  readonly counts: Counts | undefined
  readonly away: boolean
  readonly act: (what: Doing) => void
}) {
  const name = c.name || 'without a name',
    called = c.variant ? `${name}, variant ${c.variant.named}` : name,
    gone = c.deletedUntil !== null
  return (
    <li className={gone ? 'gone' : ''} data-conversion={c.id}>
      <div className="what">
        {gone ? <b>{name}</b> : <a href={`/c/${c.id}/brief`}>{name}</a>}
        {c.variant ? <span> · variant {c.variant.named}</span> : null}
        <span className="quiet small state">
          {c.variant ? `from revision ${c.variant.revision} of ${origin ?? 'a conversion no longer here'} · now ` : ''}
          revision {c.revision}
          {ago(c.at, Date.now()) ? ` · ${away ? 'seen' : 'changed'} ${ago(c.at, Date.now())}` : ''}
          {counts && !gone ? <Standing counts={counts} revision={c.revision} /> : null}
          {c.deletedUntil === null ? null : ` · deleted; can be brought back until ${day(c.deletedUntil)}`}
        </span>
      </div>
      {away ? null : (
        <div className="acts">
          {gone ? null : (
            <>
              <button type="button" onClick={() => act('duplicate')} aria-label={`Duplicate ${called}`}>
                Duplicate
              </button>
              <a className="button" href={api.exported(c.id)} download title="YAML" aria-label={`Text of ${called} as a YAML file`}>
                Text
              </a>
              <a className="button" href={api.bundle(c.id)} download aria-label={`Bundle of ${called}: text and files`}>
                Bundle
              </a>
            </>
          )}
          {/* One button in both states: whoever deletes by keyboard stands on what brings back. */}
          <button
            key="remove"
            type="button"
            onClick={() => act(gone ? 'bring back' : 'delete')}
            aria-label={`${gone ? 'Bring back' : 'Delete'} ${called}`}
          >
            {gone ? 'Bring back' : 'Delete'}
          </button>
        </div>
      )}
    </li>
  )
}

/** What stood in the way when it was last open in this browser; of an earlier revision it says which. */
function Standing({ counts: { failing, unanswered, revision: of }, revision }: { readonly counts: Counts; readonly revision: number }) {
  return (
    <>
      {' · '}
      {of === revision ? '' : `at revision ${of} `}
      <span className={failing ? 'failing' : 'sound'}>{failing ? `▲ ${failing} failing` : '● none failing'}</span>
      {unanswered ? <span className="unanswered"> ◌ {unanswered} unanswered</span> : null}
    </>
  )
}
