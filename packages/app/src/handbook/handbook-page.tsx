import { useParams, useSearch } from 'wouter'
import { useInHand } from '../shell/in-hand.ts'
import { Book } from './book.tsx'

/** The handbook beside a conversion: a figure it was opened from fills its inputs. */
export function HandbookPage() {
  const { conversion, opened } = useInHand(),
    figure = new URLSearchParams(useSearch()).get('figure') ?? undefined,
    formula = useParams()['*'] || undefined
  return (
    <>
      <h1>Handbook</h1>
      <Book
        handbook={conversion.handbook}
        at={`/c/${opened.id}/handbook`}
        system={conversion.units}
        ready={opened.told !== undefined}
        {...(formula === undefined ? {} : { formula })}
        {...(figure === undefined ? {} : { figure })}
      />
    </>
  )
}
