import type { FindingView } from '@ampwright/workbench'
import { useState } from 'react'
import { useAway, useHand } from '../shell/in-hand.ts'

/** What a person may say of a finding: that it stays as it is, or that it is no matter of this car; and taking either back. */
export function ByHand({ finding: f }: { readonly finding: FindingView }) {
  const said = f.outcome === 'accepted' || f.byHand === true || f.unheeded !== undefined
  return (
    <>
      {f.outcome === 'failing' || f.outcome === 'marginal' ? <Accept finding={f} /> : null}
      {f.outcome === 'failing' || f.outcome === 'marginal' || f.outcome === 'unanswered' ? <SetAside finding={f} /> : null}
      {said ? <TakeBack finding={f} /> : null}
    </>
  )
}

/** Accepting needs a name, a reason and what it holds for; it lapses when what the finding rests on changes. */
function Accept({ finding: f }: { readonly finding: FindingView }) {
  const { conversion } = useHand()
  return (
    <Form
      title="Accept it as it is"
      send="Accept"
      lapses="It lapses as soon as anything it rests on changes."
      fields={[
        ['by', 'Your name'],
        ['reason', 'Why it may stay so'],
        ['scope', 'What it holds for, until when'],
      ]}
      say={word =>
        conversion.sayByHand(f.id, { as: 'accepted', by: word('by'), reason: word('reason'), scope: word('scope'), date: word('date') })
      }
    />
  )
}

/** Saying that a finding is no matter of this car needs a name and a reason; it stays in view and lapses like an acceptance. */
export function SetAside({ finding: f }: { readonly finding: FindingView }) {
  const { conversion } = useHand()
  return (
    <Form
      title="It does not apply to this car"
      send="Set aside"
      lapses={`It stays in view, counted by itself, and lapses as soon as ${f.outcome === 'unanswered' && f.gaps.length ? 'one of the values it waits for is known' : 'anything it rests on changes'}.`}
      fields={[
        ['by', 'Your name'],
        ['reason', 'Why it does not apply'],
      ]}
      say={word => conversion.sayByHand(f.id, { as: 'does not apply', by: word('by'), reason: word('reason'), date: word('date') })}
    />
  )
}

type Word = (key: string) => string
function Form({
  title,
  send,
  lapses,
  fields,
  say,
}: {
  readonly title: string
  readonly send: string
  readonly lapses: string
  readonly fields: readonly (readonly [key: string, label: string])[]
  readonly say: (word: Word) => Promise<string | undefined>
}) {
  const away = useAway(),
    [wrong, setWrong] = useState<string>()
  return (
    <details className="small">
      <summary>{title}</summary>
      <form
        className="add"
        onSubmit={e => {
          e.preventDefault()
          const data = new FormData(e.currentTarget)
          void say(k => String(data.get(k) ?? '')).then(setWrong)
        }}
      >
        {fields.map(([key, label]) => (
          <input key={key} name={key} aria-label={label} placeholder={`${label.slice(0, 1).toLowerCase()}${label.slice(1)}`} />
        ))}
        <input name="date" aria-label="Day" type="date" defaultValue={new Date().toISOString().slice(0, 10)} />
        <button type="submit" disabled={away}>
          {send}
        </button>
        <span className="quiet">{lapses}</span>
        {wrong ? (
          <span className="failing" role="alert">
            ▲ {wrong}
          </span>
        ) : null}
      </form>
    </details>
  )
}

function TakeBack({ finding: f }: { readonly finding: FindingView }) {
  const { conversion } = useHand(),
    away = useAway(),
    [wrong, setWrong] = useState<string>()
  return (
    <p className="small">
      <button
        type="button"
        disabled={away}
        onClick={() => void conversion.sayByHand(f.id, { as: 'taken back' }).then(setWrong)}
        aria-label={`Take back what was said of: ${f.title}`}
      >
        {f.unheeded === undefined ? 'Take it back' : 'Take it out of the file'}
      </button>
      {wrong ? (
        <span className="failing" role="alert">
          {' '}
          ▲ {wrong}
        </span>
      ) : null}
    </p>
  )
}
