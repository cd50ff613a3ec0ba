import { asksNothing, type FigureView } from '@ampwright/workbench'
import { useEffect, useMemo, useState } from 'react'
import { Charts } from '../charts/charts.tsx'
import { Rows } from '../field/sheet.tsx'
import { Findings } from '../findings/findings.tsx'
import { ArrangeBattery } from '../fit/arrange-battery.tsx'
import { SceneView } from '../scene/scene-view.tsx'
import { useHand, useOf } from '../shell/in-hand.ts'
import { FigureTable } from '../working/figure-table.tsx'
import type { Page } from './pages.ts'
import { LayOutCircuit } from './lay-out-circuit.tsx'
import { Sentences, sentencePaths } from './sentences.tsx'
import { StudyTables } from './study-tables.tsx'

/** A stage from top to bottom: what you decide, what follows, what stands in the way. */
export function StagePage({ page }: { readonly page: Page }) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    laid = useOf(o => o.sheets),
    [figures, setFigures] = useState<readonly FigureView[]>([])
  useEffect(() => {
    const gone = page.sections.map(s => conversion.show(s))
    return () => gone.forEach(f => f())
  }, [conversion, page])
  useEffect(() => {
    if (told) void conversion.figures(page.stage).then(setFigures)
  }, [conversion, told, page])
  // The same objects as long as the fields are the same: a page of hundreds is not laid out anew for every figure.
  const [a, b, c] = page.sections.map(s => laid[s]),
    sheets = useMemo(() => [a, b, c].flatMap(s => s ?? []), [a, b, c]),
    inSentences = useMemo(() => sentencePaths(page.slug, sheets), [page.slug, sheets])
  const all = told?.findings
  const { inTheWay, aside, others } = useMemo(() => {
    const of = (all ?? []).filter(f => f.stage === page.stage)
    return { inTheWay: of.filter(f => !asksNothing(f) && !f.byHand), aside: of.filter(f => f.byHand), others: of.filter(asksNothing) }
  }, [all, page.stage])
  return (
    <>
      <h1>{page.title}</h1>
      <p className="lede">{page.lede}</p>
      {page.slug === 'fit' ? <SceneView /> : null}
      <div className="two">
        <section aria-label="What you decide" aria-busy={page.sections.some(s => laid[s] === undefined)}>
          <h2>What you decide</h2>
          {page.slug === 'high-voltage' ? <LayOutCircuit /> : null}
          <Sentences slug={page.slug} sheets={sheets} />
          {sheets.map(s => (
            <div key={s.is === 'field' ? s.field.path : s.path}>
              {page.sections.length > 1 && s.is === 'group' ? <h3>{s.label}</h3> : null}
              <Rows nodes={s.is === 'group' ? s.children : [s]} told={inSentences} />
            </div>
          ))}
        </section>
        <section aria-label="What follows">
          <h2>What follows</h2>
          <Charts kinds={page.drawings} />
          {page.tables ? <StudyTables ids={page.tables} /> : null}
          <details className="group">
            <summary>
              All figures of this stage <span className="quiet small">{figures.length}</span>
            </summary>
            <Figures figures={figures} />
          </details>
        </section>
      </div>
      {page.slug === 'fit' ? <ArrangeBattery /> : null}
      <section aria-label="What stands in the way">
        <h2>What stands in the way</h2>
        {inTheWay.length === 0 ? <p>Nothing of this stage.</p> : <Findings findings={inTheWay} />}
        {aside.length ? (
          <details open className="group">
            <summary>{aside.length} said not to apply</summary>
            <Findings findings={aside} />
          </details>
        ) : null}
        {others.length ? (
          <details className="group">
            <summary>{others.length} that hold or do not apply</summary>
            <Findings findings={others} />
          </details>
        ) : null}
      </section>
    </>
  )
}

/** Figures under the question they answer; each opens its working. */
function Figures({ figures }: { readonly figures: readonly FigureView[] }) {
  const asked = new Map<string, FigureView[]>()
  for (const f of figures) asked.set(f.asks, [...(asked.get(f.asks) ?? []), f])
  return (
    <>
      {[...asked].map(([asks, list]) => (
        <details className="group" key={asks}>
          <summary>
            {asks} <span className="quiet small">{list.length}</span>
          </summary>
          <FigureTable figures={list.map(f => ({ name: f.id, label: f.label, text: f.text }))} />
        </details>
      ))}
    </>
  )
}
