import type { FieldView } from '@ampwright/workbench'
import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react'
import { forgetTyped, halfTyped, keepTyped } from '../kept/half-typed.ts'
import { useAway, useHand } from '../shell/in-hand.ts'
import { HOW, joined, parted } from './origin.ts'

type Wrong = { readonly what: string; readonly found: string; readonly accepted: string; readonly nearest?: string }
/** What is wrong with a value, in one sentence: what, what was found, what is accepted. */
export const wrongText = (w: Wrong): string =>
  [w.what, w.found && `found ${w.found}`, w.accepted && `accepted ${w.accepted}`, w.nearest && `did you mean ${w.nearest}?`]
    .filter(Boolean)
    .join('; ')

/** Words that stand where nothing is typed: a question, what is assumed, or how a value is typed. */
const placeholder = (f: FieldView): string => f.stands ?? (f.unlocks.length ? `${f.label.toLowerCase()}?` : '')

/**
 * One value of the file: a quantity in any unit, with ± and origin, a word, a date, a reference. It commits on Enter, on leaving, and after a second of rest;
 * what cannot be read stays in the field with what is wrong, and nothing is changed.
 */
export function Field({
  field,
  inline = false,
  labelled,
}: {
  readonly field: FieldView
  readonly inline?: boolean
  readonly labelled?: string
}) {
  const { conversion } = useHand(),
    away = useAway(),
    { id: car } = conversion.snapshot()
  const stood = field.text ?? '',
    // Typed in this window before a reload and never saved: it stands there again, and is not committed by itself.
    [again, setAgain] = useState(() => halfTyped(car, field.path)),
    [text, setText] = useState(again?.text ?? stood),
    [wrong, setWrong] = useState<Wrong>(),
    [here, setHere] = useState(false)
  const held = useRef(stood),
    rest = useRef<ReturnType<typeof setTimeout>>(undefined),
    // What stands typed and not committed.
    typing = useRef<string>(undefined),
    // The page was left: what is wrong cannot be said in the field any more.
    gone = useRef(false),
    input = useRef<HTMLInputElement>(null),
    id = useId()
  // The whole text, origin and all, stands there for typing over as soon as the field is entered.
  useLayoutEffect(() => {
    if (here) input.current?.select()
  }, [here])
  // What changed elsewhere shows; what was typed here and is not committed is not lost with it: both are shown to choose from.
  useEffect(() => {
    if (held.current === stood) return
    const yours = (typing.current ?? again?.text)?.trim(),
      was = held.current
    held.current = stood
    typing.current = undefined
    clearTimeout(rest.current)
    setText(stood)
    setWrong(undefined)
    setAgain(undefined)
    conversion.typing(field.path, undefined)
    forgetTyped(car, field.path, stood)
    if (yours !== undefined && yours !== was && yours !== stood)
      conversion.clashed([{ path: field.path, yours: yours || null, theirs: stood || null, was: was || null }])
  }, [stood, conversion, car, field.path, again])
  // What is wrong with what was typed before the reload is said again; where somebody changed the same meanwhile, both are shown.
  useEffect(() => {
    const kept = halfTyped(car, field.path)
    if (kept === undefined) return
    const yours = kept.text.trim()
    if (yours === held.current.trim()) {
      forgetTyped(car, field.path)
      return setAgain(undefined)
    }
    if (kept.was.trim() !== held.current.trim()) {
      setAgain(undefined)
      setText(held.current)
      return conversion.clashed([{ path: field.path, yours: yours || null, theirs: held.current || null, was: kept.was || null }])
    }
    void conversion.check([{ path: field.path, now: yours || null }]).then(([w]) => w && setWrong(w))
  }, [conversion, car, field.path])
  // A page left by the keys of the browser takes no focus away first: what is typed is committed all the same.
  useEffect(() => {
    gone.current = false
    return () => {
      gone.current = true
      clearTimeout(rest.current)
      const left = typing.current?.trim()
      if (left === undefined || left === held.current.trim()) conversion.typing(field.path, undefined)
      else
        void conversion
          .edit([{ path: field.path, now: left === '' ? null : left }], `${field.label}: ${left === '' ? 'nothing' : left}`)
          .then(([i]) => {
            conversion.typing(field.path, undefined)
            if (i) conversion.say(stays(field.label, i))
          })
    }
  }, [conversion, field.path, field.label])

  /** What stands in the field is what stands in the file again. */
  const settled = (): void => {
    typing.current = undefined
    conversion.typing(field.path, undefined)
    forgetTyped(car, field.path)
    setAgain(undefined)
    setWrong(undefined)
  }
  const putBack = (): void => {
    clearTimeout(rest.current)
    settled()
    setText(held.current)
  }
  const changes = (now: string) => ({
    now: now === '' ? null : now,
    was: held.current === '' ? null : held.current,
    what: `${field.label}: ${now === '' ? 'nothing' : now}`,
  })
  const commit = async (now: string): Promise<void> => {
    clearTimeout(rest.current)
    const clean = now.trim()
    if (clean === held.current.trim()) return settled()
    const typedHere = typing.current,
      change = changes(clean)
    // On its way it is no longer only typed: what comes back is what was made of it. Should the page be left before, it still is.
    typing.current = undefined
    conversion.typing(field.path, change)
    const issues = await conversion.edit([{ path: field.path, now: change.now }], change.what)
    if (typing.current === undefined) conversion.typing(field.path, undefined)
    const own = issues.find(i => i.path === field.path) ?? issues[0]
    if (own) {
      if (gone.current) conversion.say(stays(field.label, own))
      typing.current ??= typedHere
      return setWrong(own)
    }
    held.current = clean
    setText(clean)
    setWrong(undefined)
    setAgain(undefined)
  }
  const typed = (now: string): void => {
    const clean = now.trim()
    setText(now)
    typing.current = now
    keepTyped(car, field.path, { text: now, was: held.current })
    conversion.typing(field.path, clean === held.current.trim() ? undefined : changes(clean))
    clearTimeout(rest.current)
    rest.current = setTimeout(() => void commit(now), REST)
    void conversion.check([{ path: field.path, now: clean === '' ? null : clean }]).then(w => {
      // While a unit is still being typed a half-written quantity is no mistake yet: it is named once it rests.
      if (w.length === 0) setWrong(undefined)
      else if (typing.current === now) conversion.typing(field.path, undefined)
    })
  }

  const known = parted(text),
    // While nobody types in it a field shows its value; how that is known stands beside it.
    shownText = here || field.is !== 'quantity' ? text : known.value
  const issue = wrong ?? field.issue
  const shared = {
    id,
    'aria-label': labelled ?? field.label,
    'aria-invalid': issue ? true : undefined,
    'aria-describedby': [again && `${id}-again`, issue && `${id}-wrong`].filter(Boolean).join(' ') || undefined,
    disabled: away,
    'data-path': field.path,
    'data-is': field.is,
  }
  const kind = issue
    ? 'wrong'
    : field.text === undefined
      ? field.stands === undefined
        ? field.unlocks.length
          ? 'gap'
          : ''
        : 'assumed'
      : field.how === 'assumed'
        ? 'assumed'
        : ''
  return (
    <span className={`field ${kind}`}>
      {field.is === 'choice' || field.is === 'reference' || (field.is === 'part' && field.oneOf) ? (
        <select {...shared} value={field.text ?? ''} onChange={e => void commit(e.target.value)}>
          <option value="">{placeholder(field) || '–'}</option>
          {field.text !== undefined && !field.oneOf?.includes(field.text) ? <option value={field.text}>{field.text}</option> : null}
          {field.oneOf?.map(o => (
            <option key={o}>{o}</option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          ref={input}
          data-stands={stood}
          value={shownText}
          size={inline ? Math.max(4, Math.min(34, (shownText || placeholder(field)).length)) : 20}
          onFocus={() => setHere(true)}
          placeholder={placeholder(field)}
          list={field.is === 'file' ? `${id}-files` : undefined}
          autoComplete="off"
          spellCheck={false}
          onChange={e => typed(e.target.value)}
          onBlur={() => {
            setHere(false)
            void commit(text)
          }}
          onKeyDown={e => {
            if (e.key === 'Enter') void commit(text)
            if (e.key === 'Escape') putBack()
          }}
        />
      )}
      {field.is === 'file' ? (
        <datalist id={`${id}-files`}>
          {field.oneOf?.map(o => (
            <option key={o} value={o} />
          ))}
        </datalist>
      ) : null}
      {field.is === 'quantity' && known.how !== undefined && !issue ? (
        <span className="from">
          <select
            className="how"
            aria-label={`How ${field.label} is known`}
            value={known.how}
            disabled={away}
            onChange={e => void commit(joined(known.value, e.target.value, known.note))}
          >
            {HOW.map(h => (
              <option key={h}>{h}</option>
            ))}
          </select>
          {inline || !known.note ? null : `, ${known.note}`}
        </span>
      ) : null}
      {field.text === undefined && field.taking !== undefined && !issue ? (
        <span className="from">
          {field.how ?? ''}
          {field.note ? `, ${field.note}` : ''}{' '}
          <button
            type="button"
            className="bare small"
            disabled={away}
            onClick={() => {
              // The button goes away with what was assumed: whoever works by keyboard goes on from the field.
              input.current?.focus()
              void commit(field.taking as string)
            }}
            aria-label={`Take ${field.stands} for ${field.label}`}
          >
            take
          </button>
        </span>
      ) : null}
      {again ? (
        <span className="again" id={`${id}-again`}>
          not saved yet{' '}
          <button type="button" className="bare small" onClick={putBack} aria-label={`Put back ${field.label} to what is saved`}>
            put back
          </button>
        </span>
      ) : null}
      {issue ? (
        <span className="error" id={`${id}-wrong`} role="alert">
          {wrongText(issue)}
        </span>
      ) : null}
    </span>
  )
}
const stays = (label: string, wrong: Wrong): string => `${label} stays as it was: ${wrongText(wrong)}.`
/** A second of rest commits what was typed [ms]. */
const REST = 1000
