import type { Later } from './later.ts'

/** A stage that comes later: what it will ask, and where what is known of it stands until then. */
export function LaterPage({ later: { title, asks, until } }: { readonly later: Later }) {
  return (
    <>
      <h1>{title}</h1>
      <p className="lede">This stage comes later. Nothing can be filled in here yet, and nothing of it is judged.</p>
      <h2>What it will ask</h2>
      <ul>
        {asks.map(a => (
          <li key={a}>{a}</li>
        ))}
      </ul>
      <h2>Until then</h2>
      <p>{until}</p>
    </>
  )
}
