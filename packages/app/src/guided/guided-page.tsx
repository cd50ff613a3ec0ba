import type { ConceptsView, QuestionView } from '@ampwright/workbench'
import { proxy } from 'comlink'
import { useEffect, useRef, useState } from 'react'
import { Link, useLocation } from 'wouter'
import { storedUnits } from '../opened.ts'
import { api } from '../server/api.ts'
import { type Engine, startEngine } from '../worker/engine.ts'
import { ConceptsTable } from './concepts-table.tsx'
import { Question } from './question.tsx'

const CHAPTERS = ['layout', 'the car', 'its driveline', 'what it must do'] as const
const KEPT = 'ampwright.guided'
const keptAnswers = (): Readonly<Record<string, string>> => {
  try {
    return JSON.parse(sessionStorage.getItem(KEPT) ?? '{}') as Record<string, string>
  } catch {
    return {}
  }
}

/** A new conversion from a few questions, ending in concepts worked out for this car and brief. Any answer may stay open, and what that leaves open is said. */
export function GuidedPage() {
  const engine = useRef<Engine>(undefined),
    [given, setGiven] = useState(keptAnswers),
    [questions, setQuestions] = useState<readonly QuestionView[]>(),
    [at, setAt] = useState(0),
    [doing, setDoing] = useState<string>(),
    [view, setView] = useState<ConceptsView>(),
    [said, setSaid] = useState<string>(),
    [, go] = useLocation(),
    top = useRef<HTMLHeadingElement>(null)
  engine.current ??= startEngine(() => {})
  useEffect(() => {
    sessionStorage.setItem(KEPT, JSON.stringify(given))
    let gone = false
    void engine.current?.questions(given).then(q => gone || setQuestions(q))
    return () => {
      gone = true
    }
  }, [given])
  const chapters = CHAPTERS.filter(c => questions?.some(q => q.chapter === c)),
    chapter = chapters[Math.min(at, chapters.length - 1)],
    wrong = questions?.flatMap(q => q.fields.filter(f => f.problem).map(f => `${q.chapter}, ${q.asks} ${f.label}: ${f.text}`)) ?? []
  const turn = (to: number): void => {
    setAt(to)
    setView(undefined)
    top.current?.focus()
    scrollTo(0, 0)
  }
  const search = async (): Promise<void> => {
    setSaid(undefined)
    setDoing('Looking at what can be built into this car …')
    const made = await engine.current?.concepts(given, storedUnits(), proxy(setDoing) as never)
    setDoing(undefined)
    if (made === undefined) return
    if ('refused' in made) setSaid(made.refused)
    else setView(made)
  }
  const begin = async (id: string | undefined): Promise<void> => {
    try {
      const concept = view?.concepts.find(c => c.id === id),
        begun = await engine.current?.begun(given, concept?.edits ?? [])
      if (begun === undefined) return
      const made = await api.create({ text: begun.text })
      if (concept) await api.edit(made.id, begun.edits, `concept: ${concept.title}`)
      sessionStorage.removeItem(KEPT)
      go(`/c/${made.id}/${concept ? 'drive' : 'brief'}`)
    } catch (e) {
      setSaid((e as Error).message)
    }
  }
  if (questions === undefined) return <main>Opening …</main>
  return (
    <main className="guided">
      <p className="small">
        <Link href="/">Ampwright</Link> · a new conversion
      </p>
      <h1 ref={top} tabIndex={-1}>
        {at < chapters.length ? TITLES[chapter ?? 'layout'] : 'Concepts for this car'}
      </h1>
      <ol className="steps" aria-label="Where you are">
        {[...chapters, 'concepts'].map((c, i) => (
          <li key={c} aria-current={i === at ? 'step' : undefined}>
            <button type="button" className="bare" onClick={() => turn(i)}>
              {c}
            </button>
          </li>
        ))}
      </ol>
      {said ? (
        <div className="note bad" role="alert">
          {said}
        </div>
      ) : null}
      {at < chapters.length ? (
        <>
          {questions
            .filter(q => q.chapter === chapter)
            .map(q => (
              <Question key={q.id} question={q} given={given} answer={(path, text) => setGiven(g => ({ ...g, [path]: text }))} />
            ))}
          <p className="bar">
            {at > 0 ? (
              <button type="button" onClick={() => turn(at - 1)}>
                Back
              </button>
            ) : null}
            <button type="button" className="main" onClick={() => turn(at + 1)}>
              Next
            </button>
          </p>
        </>
      ) : (
        <>
          <p className="lede">
            Each way this car can be converted is planned with parts of the catalogue, searched for the smallest that meets the brief, and
            worked out in full. That takes some seconds.
          </p>
          {wrong.length ? <p className="failing">▲ Cannot be read yet; go back and mend: {wrong.join('; ')}.</p> : null}
          <p className="bar">
            <button type="button" onClick={() => turn(at - 1)}>
              Back
            </button>
            <button type="button" className="main" disabled={doing !== undefined || wrong.length > 0} onClick={() => void search()}>
              Work out the concepts
            </button>
            <button type="button" disabled={wrong.length > 0} onClick={() => void begin(undefined)}>
              Go on without one
            </button>
          </p>
          {doing ? <p role="status">{doing}</p> : null}
          {view ? <ConceptsTable view={view} take={id => void begin(id)} /> : null}
        </>
      )}
    </main>
  )
}
const TITLES = {
  layout: 'What car is it?',
  'the car': 'The car as it is',
  'its driveline': 'Its driveline',
  'what it must do': 'What it must do',
} as const
