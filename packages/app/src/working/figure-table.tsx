import { useHand } from '../shell/in-hand.ts'

/** Figures with their names; each opens its working. */
export function FigureTable({
  figures,
}: {
  readonly figures: readonly { readonly name: string; readonly label: string; readonly text: string }[]
}) {
  const { openWorking } = useHand()
  return (
    <table className="figures">
      <tbody>
        {figures.map(f => (
          <tr key={f.name}>
            <td>{f.label}</td>
            <td>
              <button type="button" className="num" onClick={() => openWorking(f.name)} aria-label={`Working of ${f.label}, ${f.text}`}>
                {f.text}
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
