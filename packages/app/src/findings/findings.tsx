import type { FindingView } from '@ampwright/workbench'
import { memo } from 'react'
import { SetAside } from './by-hand.tsx'
import { Finding } from './finding.tsx'

/** Findings in their order; those that wait for the very same values stand together, so that one question is asked once. */
export const Findings = memo(function Findings({ findings }: { readonly findings: readonly FindingView[] }) {
  return (
    <>
      {together(findings).map(([first, ...others]) =>
        others.length ? <Waiting key={first.id} findings={[first, ...others]} /> : <Finding key={first.id} finding={first} />,
      )}
    </>
  )
})

type Group = readonly [FindingView, ...FindingView[]]
function together(findings: readonly FindingView[]): readonly Group[] {
  const groups = new Map<string, [FindingView, ...FindingView[]]>()
  for (const f of findings) {
    const key =
        f.outcome === 'unanswered' && f.gaps.length && f.because === undefined && f.unheeded === undefined
          ? f.gaps
              .map(g => g.path)
              .toSorted()
              .join('\n')
          : f.id,
      met = groups.get(key)
    if (met) met.push(f)
    else groups.set(key, [f])
  }
  return [...groups.values()]
}

const MOST_NAMED = 6
function Waiting({ findings }: { readonly findings: Group }) {
  const [first] = findings,
    says = [...new Set(findings.flatMap(f => f.remedies.map(r => r.says)))],
    cautions = [...new Set(findings.flatMap(f => f.caution ?? []))]
  const more = first.gaps.length - MOST_NAMED
  return (
    <article className="find" aria-label={`unanswered: ${findings.length} rules`}>
      <span className="out unanswered">
        ◌ unanswered<small>{findings.length} rules</small>
      </span>
      <div>
        <p>
          They wait for the same:{' '}
          {first.gaps
            .slice(0, MOST_NAMED)
            .map(g => g.label)
            .join('; ')}
          {more > 0 ? `; and ${more} more` : ''}.
        </p>
        <ul>
          {findings.map(f => (
            <li key={f.id}>
              {f.title}
              {f.item ? <span className="quiet"> · {f.item}</span> : null}
              <SetAside finding={f} />
            </li>
          ))}
        </ul>
        {cautions.map(c => (
          <p className="caution" key={c}>
            <b>Caution:</b> {c}
          </p>
        ))}
        {says.map(s => (
          <p key={s}>→ {s}</p>
        ))}
      </div>
    </article>
  )
}
