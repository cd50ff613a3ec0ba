import { tallies } from '@ampwright/workbench'
import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import { LATER } from '../stages/later.ts'
import { STAGE_PAGES } from '../stages/pages.ts'
import { useOf } from './in-hand.ts'
import { MORE_PAGES } from './more-pages.tsx'

/** The job as a road with stops, each with what is failing and unanswered there. */
export function JobLine({ id, page }: { readonly id: string; readonly page: string }) {
  const told = useOf(o => o.told),
    name = useOf(o => o.name),
    all = told?.findings ?? [],
    counts = tallies(all),
    line = useRef<HTMLElement>(null)
  // On a phone the stops run along a line: the one the page belongs to is in view.
  useEffect(() => {
    const stop = line.current?.querySelector<HTMLElement>(`a[href$="/${page}"]`)
    if (line.current && line.current.getBoundingClientRect().top >= 0) stop?.scrollIntoView({ block: 'nearest', inline: 'center' })
  }, [page])
  return (
    <nav className="job" aria-label="The job" ref={line}>
      <p className="name">
        <Link href="/">Ampwright</Link>
      </p>
      <p className="car">{name || 'A conversion without a name yet'}</p>
      <ol className="road">
        {STAGE_PAGES.map(p => {
          const t = counts.get(p.stage)
          return (
            <li key={p.slug}>
              <Link
                href={`/c/${id}/${p.slug}`}
                aria-current={p.slug === page ? 'page' : undefined}
                className={t && !t.failing && !t.unanswered ? 'done' : ''}
              >
                <i />
                {p.slug === 'pack' ? 'Pack' : p.title}
                <Tally failing={t?.failing ?? 0} unanswered={t?.unanswered ?? 0} />
              </Link>
            </li>
          )
        })}
        {LATER.map(l => (
          <li key={l.slug}>
            <Link className="later" href={`/c/${id}/${l.slug}`} aria-current={l.slug === page ? 'page' : undefined}>
              <i />
              {l.title}
              <span className="hidden">, comes later</span>
            </Link>
          </li>
        ))}
      </ol>
      <ol>
        {Object.entries(MORE_PAGES).map(([slug, { title }]) => (
          <li key={slug}>
            <Link href={`/c/${id}/${slug}`} aria-current={page === slug ? 'page' : undefined}>
              <span />
              {title}
              {slug === 'findings' ? (
                <Tally
                  failing={all.filter(f => f.outcome === 'failing').length}
                  unanswered={all.filter(f => f.outcome === 'unanswered').length}
                />
              ) : (
                <span />
              )}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  )
}

function Tally({ failing, unanswered }: { readonly failing: number; readonly unanswered: number }) {
  return (
    <span className="tally">
      {failing ? (
        <span className="failing">
          ▲{failing}
          <span className="hidden"> failing</span>
        </span>
      ) : null}
      {unanswered ? (
        <span className="unanswered">
          ◌{unanswered}
          <span className="hidden"> unanswered</span>
        </span>
      ) : null}
    </span>
  )
}
