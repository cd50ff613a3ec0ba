import type { ApiConversionLine as Listed } from '@ampwright/server'
import type { ComparisonView } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { api } from '../server/api.ts'
import { useInHand } from '../shell/in-hand.ts'
import { ComparisonTables } from './comparison-tables.tsx'
import type { Revision } from './revisions-page.tsx'
import { type SideChoice, sideOf } from './sides.ts'

type Sides = readonly [SideChoice, SideChoice]
type Answer = { readonly sides: Sides; readonly view: ComparisonView } | { readonly says: string }

/** Two states side by side: revisions of this car, the car as it stands, or another conversion of the store. */
export function Compare({
  revisions,
  sides,
  choose,
}: {
  readonly revisions: readonly Revision[]
  readonly sides: Sides | undefined
  readonly choose: (sides: Sides) => void
}) {
  const { conversion, opened } = useInHand(),
    [others, setOthers] = useState<readonly Listed[]>([]),
    [answer, setAnswer] = useState<Answer>(),
    [busy, setBusy] = useState(false),
    [before, after] = sides ?? [(revisions[1] ? `revision ${revisions[1].revision}` : 'now') as SideChoice, 'now' as SideChoice]
  useEffect(() => {
    // Without the list the revisions of this car can still be compared.
    api.list().then(
      all => setOthers(all.filter(c => c.id !== opened.id && !c.deletedUntil)),
      () => undefined,
    )
  }, [opened.id])
  useEffect(() => {
    if (sides === undefined) return
    let current = true
    setBusy(true)
    const answered = async (): Promise<Answer> => {
      const [a, b] = await Promise.all(sides.map(s => sideOf(opened.id, s))),
        made = await conversion.compare(a, b)
      return made.ok ? { sides, view: made.view } : { says: made.says }
    }
    void answered()
      .catch((e: unknown) => ({ says: (e as Error).message }))
      .then(a => {
        if (!current) return
        setAnswer(a)
        setBusy(false)
      })
    return () => {
      current = false
    }
  }, [conversion, opened.id, opened.told, sides])
  const named = (s: SideChoice): string =>
    s === 'now' ? 'as it stands' : s.startsWith('conversion ') ? nameOf(others.find(o => `conversion ${o.id}` === s)) : s
  return (
    <>
      <form
        className="add"
        onSubmit={e => {
          e.preventDefault()
          choose([before, after])
        }}
      >
        <Side label="Before" value={before} revisions={revisions} others={others} choose={s => choose([s, after])} />
        <Side label="After" value={after} revisions={revisions} others={others} choose={s => choose([before, s])} />
        <button type="button" onClick={() => choose([after, before])}>
          Turn round
        </button>
        {sides === undefined ? (
          <button type="submit" className="main">
            Compare
          </button>
        ) : null}
        <span role="status" className="quiet small">
          {busy ? 'Being worked out …' : ''}
        </span>
      </form>
      {answer && 'says' in answer ? (
        <p className="failing" role="alert">
          ▲ {answer.says}
        </p>
      ) : null}
      {answer && 'view' in answer ? <ComparisonTables view={answer.view} names={[named(answer.sides[0]), named(answer.sides[1])]} /> : null}
    </>
  )
}

const nameOf = (o: Listed | undefined): string =>
  o ? `${o.name || 'without a name'}${o.variant ? `, ${o.variant}` : ''}` : 'another conversion'

function Side({
  label,
  value,
  revisions,
  others,
  choose,
}: {
  readonly label: string
  readonly value: SideChoice
  readonly revisions: readonly Revision[]
  readonly others: readonly Listed[]
  readonly choose: (s: SideChoice) => void
}) {
  return (
    <label>
      {label}{' '}
      <select value={value} onChange={e => choose(e.target.value as SideChoice)}>
        <option value="now">this car as it stands</option>
        <optgroup label="Revisions of this car">
          {revisions.map(r => (
            <option key={r.revision} value={`revision ${r.revision}`}>
              revision {r.revision}
              {r.what ? `: ${r.what.slice(0, 40)}` : ''}
            </option>
          ))}
        </optgroup>
        {others.length ? (
          <optgroup label="Other conversions and variants">
            {others.map(o => (
              <option key={o.id} value={`conversion ${o.id}`}>
                {nameOf(o)}
              </option>
            ))}
          </optgroup>
        ) : null}
      </select>
    </label>
  )
}
