import { countedAs, type FindingView, MARKS, type RemedyView } from '@ampwright/workbench'
import { useState } from 'react'
import { useHand, useInHand } from '../shell/in-hand.ts'
import type { Preview } from '../worker/service.ts'
import { ByHand } from './by-hand.tsx'

/** One finding: what was found, against what, what to do, with the caution where people can be hurt. */
export function Finding({ finding: f }: { readonly finding: FindingView }) {
  const { openWorking } = useHand()
  return (
    <article className="find" aria-label={`${countedAs(f)}: ${f.title}`}>
      <span className={`out ${f.outcome.replaceAll(' ', '-')}`}>
        {MARKS[f.outcome]} {countedAs(f)}
        <small>{HARM[f.harm]}</small>
      </span>
      <div>
        <h3>
          {f.title}
          {f.item ? <span className="quiet"> · {f.item}</span> : null}
        </h3>
        {f.says ? <p>{f.says}</p> : null}
        {f.because ? <p className="quiet small">{f.because}</p> : null}
        {f.unheeded ? <p className="marginal small">◐ {f.unheeded}</p> : null}
        <p className="small">
          {f.found ? (
            <>
              found{' '}
              <button
                type="button"
                className="num"
                onClick={() => openWorking(f.found?.name as string)}
                aria-label={`Working of ${f.found.text}`}
              >
                {f.found.text}
              </button>
            </>
          ) : null}
          {f.required ? (
            <>
              {' '}
              · {f.required.side}{' '}
              <button
                type="button"
                className="num"
                onClick={() => openWorking(f.required?.name as string)}
                aria-label={`Where ${f.required.text} comes from`}
              >
                {f.required.text}
              </button>
            </>
          ) : null}
        </p>
        {f.caution ? (
          <p className="caution">
            <b>Caution:</b> {f.caution}
          </p>
        ) : null}
        {f.remedies.length ? (
          <ul>
            {f.remedies.map((r, i) => (
              <Remedy key={`${i} ${r.says}`} remedy={r} />
            ))}
          </ul>
        ) : null}
        <ByHand finding={f} />
        <p className="quiet small">
          {f.source}
          {f.requirement && f.outcome !== 'sound' ? ` · ${f.requirement}` : ''}
        </p>
      </div>
    </article>
  )
}
const HARM = { S3: 'people', S2: 'costly damage', S1: 'nuisance' } as const

/** A remedy that is an edit is tried on the whole car before it is taken. */
function Remedy({ remedy: r }: { readonly remedy: RemedyView }) {
  const { conversion, opened } = useInHand(),
    [tried, setTried] = useState<Preview | 'trying'>()
  if (r.do !== 'set') return <li>{r.says}</li>
  return (
    <li>
      {r.says}{' '}
      <button
        type="button"
        disabled={opened.saving === 'server away'}
        aria-disabled={tried === 'trying'}
        onClick={() => {
          if (tried === 'trying') return
          setTried('trying')
          void conversion.preview(r.edits).then(setTried)
        }}
      >
        {tried === 'trying' ? 'Trying …' : 'Preview'}
      </button>
      {tried && tried !== 'trying' ? (
        <PreviewView
          preview={tried}
          take={() => {
            setTried(undefined)
            void conversion.edit(r.edits, r.says)
          }}
          leave={() => setTried(undefined)}
        />
      ) : null}
    </li>
  )
}

/** What a change does to the whole car, before it is made. */
export function PreviewView({
  preview: p,
  take,
  leave,
}: {
  readonly preview: Preview
  readonly take: () => void
  readonly leave: () => void
}) {
  return (
    <div className="preview" role="status">
      <p>
        <b>
          Cures {p.cures.length}, worsens {p.worsens.length}
        </b>
      </p>
      {p.cures.map(c => (
        <p key={c} className="sound">
          ● {c}
        </p>
      ))}
      {p.worsens.map(w => (
        <p key={w} className="failing">
          ▲ {w}
        </p>
      ))}
      {p.headline.length ? (
        <table className="figures">
          <tbody>
            {p.headline.map(h => (
              <tr key={h.label}>
                <td>{h.label}</td>
                <td className="num">
                  {h.before} → {h.after}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        <p className="quiet">No headline figure moves.</p>
      )}
      {p.refused ? <p className="failing">Not offered: {p.refused}</p> : null}
      <button type="button" className="main" disabled={!p.offered} onClick={take}>
        Take it
      </button>{' '}
      <button type="button" onClick={leave}>
        Leave it
      </button>
    </div>
  )
}
