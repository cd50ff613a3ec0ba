import { type PartFill, type PartPlace, type PartTaking, withPrice } from '@ampwright/workbench'
import { useEffect, useId, useRef, useState } from 'react'
import { PreviewView } from '../findings/finding.tsx'
import { painted } from '../painted.ts'
import { PriceTaken, priced } from '../shelf/price-taken.tsx'
import { type Piece, shelfApi } from '../shelf/shelf-api.ts'
import { useInHand } from '../shell/in-hand.ts'
import type { Preview } from '../worker/service.ts'

/** What choosing a record does, before it is done: what it fills, what is typed and stays, and what the whole car makes of it. */
export function Taking({
  place: p,
  id,
  piece,
  leave,
}: {
  readonly place: PartPlace
  readonly id: string
  /** The piece on the shelf it is: it is kept for this car when it is taken. */
  readonly piece?: Piece | undefined
  readonly leave: () => void
}) {
  const { conversion, opened } = useInHand(),
    [taking, setTaking] = useState<PartTaking | { readonly refused: string }>(),
    [free, setFree] = useState(false),
    [pricing, setPricing] = useState(true),
    [tried, setTried] = useState<Preview | 'trying'>(),
    [wrong, setWrong] = useState<string>(),
    box = useRef<HTMLElement>(null),
    check = useId()
  useEffect(() => void conversion.partTaking(p.path, id).then(setTaking), [conversion, p.path, id, opened.told])
  const isRead = taking !== undefined
  useEffect(() => {
    if (isRead) box.current?.focus()
  }, [isRead])
  if (taking === undefined) return <p className="quiet">Reading …</p>
  const price = 'refused' in taking || piece === undefined ? undefined : priced(taking, piece),
    chosen = 'refused' in taking ? [] : free ? taking.freeing : taking.edits,
    edits = price && pricing ? withPrice(chosen, price.at, price.text) : chosen,
    // The price of the piece goes in the place of what is typed there.
    stays = 'refused' in taking ? [] : taking.stays.filter(f => !(price && pricing && f.path === price.at.path))
  const take = async (): Promise<void> => {
    const kept = piece && (await shelfApi.reserve({ piece: piece.key, conversion: opened.id }))
    if (kept?.is === 'refused') return setWrong(kept.says)
    const issues = await conversion.edit(edits, `${p.label} ${p.of}: ${id}${piece ? `, «${piece.key}» of the shelf` : ''}`)
    // What could not be put into the car is kept for it no longer.
    if (issues[0] && kept && !piece?.reserved) await shelfApi.undo(kept.revision)
    if (issues[0]) return setWrong(`${issues[0].path}: ${issues[0].what}; found ${issues[0].found}; accepted ${issues[0].accepted}`)
    leave()
    // What was open goes away with its buttons: whoever works by keyboard goes on from the place.
    await painted()
    document.getElementById(`at-${p.path}`)?.querySelector('button')?.focus()
  }
  return (
    <section className="taking" ref={box} tabIndex={-1} aria-label={`What ${id} fills`}>
      <h3>
        {[p.label, p.of].filter(Boolean).join(' ')}: <code>{id}</code>
        {piece ? ` from the shelf, ${piece.serial === undefined ? piece.key : `serial ${piece.serial}`}` : ''}
      </h3>
      {piece ? (
        <p className="small quiet">
          {piece.reserved
            ? 'It is kept for this car already: check that it stands in no other place of it.'
            : 'It is kept for this car when you take it; no other car can have it then.'}
        </p>
      ) : null}
      {'refused' in taking ? (
        <p className="failing">▲ {taking.refused}</p>
      ) : (
        <>
          <Fills fills={free ? [...taking.fills, ...stays] : taking.fills} id={id} />
          {stays.length ? (
            <>
              {free ? null : <Stays stays={stays} />}
              <p>
                <input
                  type="checkbox"
                  id={check}
                  checked={free}
                  onChange={e => {
                    setFree(e.target.checked)
                    setTried(undefined)
                  }}
                />{' '}
                <label htmlFor={check}>Take out what is typed, so that the figures of this record stand</label>
              </p>
            </>
          ) : null}
          {price ? (
            <PriceTaken
              price={price}
              on={pricing}
              turn={on => {
                setPricing(on)
                setTried(undefined)
              }}
            />
          ) : null}
          {taking.others.length ? (
            <p className="small">
              <span className="quiet">Also typed there, and nothing this record says anything of: </span>
              {taking.others.map((f, i) => (
                <span key={f.path}>
                  {i ? '; ' : ''}
                  {f.label.toLowerCase()} <span className="num">{f.before}</span>
                </span>
              ))}
              <span className="quiet">. It stays.</span>
            </p>
          ) : null}
          <div className="add">
            <button
              type="button"
              className="main"
              disabled={tried === 'trying' || opened.saving === 'server away'}
              onClick={() => {
                setTried('trying')
                void conversion.preview(edits).then(setTried)
              }}
            >
              {tried === 'trying' ? 'Trying …' : 'Preview on the whole car'}
            </button>
            <button type="button" onClick={leave}>
              Leave it
            </button>
          </div>
          {tried && tried !== 'trying' ? <PreviewView preview={tried} take={() => void take()} leave={leave} /> : null}
        </>
      )}
      {wrong ? (
        <p className="failing" role="alert">
          ▲ {wrong}
        </p>
      ) : null}
    </section>
  )
}

function Fills({ fills, id }: { readonly fills: readonly PartFill[]; readonly id: string }) {
  if (fills.length === 0) return <p className="quiet">It fills nothing that is not typed already.</p>
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keyboard too
    <div className="scroll" tabIndex={0} role="group" aria-label="What it fills">
      <table className="many">
        <caption className="small quiet">What it fills, from part {id}</caption>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">Now</th>
            <th scope="col">Then</th>
            <th scope="col">Known</th>
          </tr>
        </thead>
        <tbody>
          {fills.map(f => (
            <tr key={f.path}>
              <th scope="row">{f.label}</th>
              <td className="num">{f.before ?? <span className="quiet">–</span>}</td>
              <td className="num">{f.after ?? <span className="unanswered">◌ asked again</span>}</td>
              <td>{f.how || <span className="quiet">not known</span>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Stays({ stays }: { readonly stays: readonly PartFill[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keyboard too
    <div className="scroll" tabIndex={0} role="group" aria-label="What is typed and stays">
      <table className="many">
        <caption className="small">
          <span className="marginal">◐</span> Typed in the file: this stays, whatever the record says. Check that it belongs to this part.
        </caption>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">Typed, stays</th>
            <th scope="col">The record says</th>
          </tr>
        </thead>
        <tbody>
          {stays.map(f => (
            <tr key={f.path}>
              <th scope="row">{f.label}</th>
              <td className="num">{f.before}</td>
              <td className="num">{f.after}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
