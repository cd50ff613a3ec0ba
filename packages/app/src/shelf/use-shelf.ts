import { isSameCar } from '@ampwright/conversion'
import type { ApiConversionLine } from '@ampwright/server'
import { useCallback, useEffect, useRef, useState } from 'react'
import { api } from '../server/api.ts'
import { live } from '../server/live.ts'
import { type Piece, type Shelf, shelfApi } from './shelf-api.ts'

/** The shelf and the cars a piece can be kept for, anew with every change anybody makes. */
export type ShelfInHand = {
  readonly shelf: Shelf | undefined
  readonly cars: readonly ApiConversionLine[]
  /** Why the shelf is not there, or may be old. */
  readonly wrong: string | undefined
  readonly renew: () => Promise<void>
}
type Known = Omit<ShelfInHand, 'renew'>

/** Changes that come together are asked for once [ms]. */
const TOGETHER = 60

export function useShelf(): ShelfInHand {
  const [known, setKnown] = useState<Known>({ shelf: undefined, cars: [], wrong: undefined }),
    soon = useRef<ReturnType<typeof setTimeout>>(undefined)
  const renew = useCallback(async (): Promise<void> => {
    try {
      const [shelf, list] = await Promise.all([shelfApi.read(), api.list()])
      setKnown({ shelf, cars: list.filter(c => c.deletedUntil === null), wrong: undefined })
    } catch (e) {
      setKnown(before => ({ ...before, wrong: (e as Error).message }))
    }
  }, [])
  useEffect(() => {
    const later = (): void => {
      clearTimeout(soon.current)
      soon.current = setTimeout(() => void renew(), TOGETHER)
    }
    void renew()
    const letGo = live({ hear: later, away: later })
    return () => {
      letGo()
      clearTimeout(soon.current)
    }
  }, [renew])
  return { ...known, renew }
}

/** What a car is called in a list: a variant by its own name too. */
export const carName = (c: ApiConversionLine): string => `${c.name || 'A car without a name'}${c.variant ? ` (${c.variant.named})` : ''}`

/** Whether a piece is kept for a conversion, or for one that is the same car: variants of it count. */
export function isKeptFor({ reserved }: Piece, id: string, cars: readonly ApiConversionLine[]): boolean {
  if (reserved?.id === undefined || reserved.missing) return false
  return isSameCar(
    reserved.id,
    id,
    cars.map(c => ({ id: c.id, name: c.name, of: c.variant?.of, deleted: false })),
  )
}
