import { MARKS } from '@ampwright/workbench'
import { useInHand } from './in-hand.ts'

/** What is always in view: each figure with what is wanted of it as a mark on a rail. */
export function Headline() {
  const { opened, openWorking } = useInHand(),
    { told, early, renewing } = opened
  return (
    <ul className={`headline${renewing ? ' renewing' : ''}`} aria-label={renewing ? 'Headline, renewing' : 'Headline'} aria-busy={renewing}>
      {(told?.headline ?? []).map((h, i) => {
        const value = (h.id && early.get(h.id)) ?? h.value
        return (
          <li key={h.id ?? `${h.label} ${i}`}>
            <button
              type="button"
              onClick={() => h.id && openWorking(h.id)}
              aria-disabled={!h.id}
              title={h.missing.length ? `Missing: ${h.missing.join('; ')}` : h.band}
            >
              <span className="what">{h.label}</span>
              <b>
                {h.outcome ? (
                  <span className={h.outcome}>
                    {MARKS[h.outcome]}
                    <span className="hidden">{h.outcome}</span>{' '}
                  </span>
                ) : null}
                {value ?? '–'}
              </b>
              <span className="asked">
                {h.wanted ??
                  (h.missing[0]
                    ? `missing: ${h.missing[0]}`
                    : h.without.length
                      ? `without ${h.without.length} usual parts`
                      : h.band && h.band !== h.value
                        ? h.band
                        : '\u00a0')}
              </span>
              {h.rail ? (
                <span className={`rail ${h.outcome ?? ''}`} aria-hidden="true" style={{ display: 'block' }}>
                  <u style={{ width: `${100 * h.rail.at}%` }} />
                  <s style={{ left: `${100 * h.rail.mark}%` }} />
                </span>
              ) : null}
            </button>
          </li>
        )
      })}
      {told && told.headline.length === 0 ? <li className="empty">Nothing can be worked out yet: the brief asks for nothing.</li> : null}
    </ul>
  )
}
