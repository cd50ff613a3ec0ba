import type { FieldView, SurveyRow } from '@ampwright/workbench'
import { Link } from 'wouter'
import { Field } from '../field/field.tsx'
import { useInHand } from '../shell/in-hand.ts'
import { pageOf } from '../stages/pages.ts'

/** Most questions a row names; it says how many more wait for it. */
const NAMED = 2

/** One thing to measure: what for, how, what it gains, and the field itself. On paper the field is an empty box. */
export function MeasureRow({ row: r }: { readonly row: SurveyRow }) {
  const more = r.unlocks.length - NAMED
  return (
    <li className={`measure${r.done ? ' done' : ''}`}>
      <div>
        <h3>
          {r.done ? (
            <span className="sound">✓ filled in · </span>
          ) : r.missing ? (
            <span className="unanswered">
              ◌<span className="hidden"> missing</span>{' '}
            </span>
          ) : null}
          {r.label}
          {r.now && !r.done ? <span className="num"> {r.now}</span> : null}
        </h3>
        <p className="how">
          {r.measure ? (
            <>
              {r.measure.tool} · {r.measure.accuracy} · {r.measure.minutes} min
            </>
          ) : (
            'yours to decide or to look up'
          )}
        </p>
        {r.gains.map(g => (
          <p className="gain" key={g}>
            {g}
          </p>
        ))}
        {r.unlocks.length ? (
          <p className="quiet small">
            Waits for it: {r.unlocks.slice(0, NAMED).join(' · ')}
            {more > 0 ? ` and ${more} more` : ''}
          </p>
        ) : null}
      </div>
      <div className="fill">
        {r.field ? <Field field={r.field} labelled={r.label} /> : <Elsewhere path={r.path} />}
        <Box field={r.field} />
      </div>
    </li>
  )
}

/** A whole list is missing: it is begun on the page of its stage. */
function Elsewhere({ path }: { readonly path: string }) {
  const { opened } = useInHand(),
    page = pageOf(path)
  return page ? (
    <Link href={`/c/${opened.id}/${page.slug}`} className="on-screen">
      A list: begin it on the page {page.title}
    </Link>
  ) : null
}

/** The box to write into, on paper only: what may be written, and with what and when it was measured. */
function Box({ field }: { readonly field: FieldView | undefined }) {
  return (
    <div className="box" aria-hidden="true">
      <div className="write" />
      <p>
        {field?.oneOf?.length ? field.oneOf.join(' / ') : field?.example ? `${field.example}, with its ±` : ''}
        {field?.oneOf?.length ? '' : ' '}
      </p>
      <p className="by">
        <span>with</span>
        <span>day</span>
        <span>by</span>
      </p>
    </div>
  )
}
