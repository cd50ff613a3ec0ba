import { createContext, useContext, useSyncExternalStore } from 'react'
import type { OpenConversion } from '../open-conversion.ts'
import type { Opened } from '../opened.ts'

/** The conversion this window has in hand, and what opens a working beside it. */
export type InHand = { readonly conversion: OpenConversion; readonly openWorking: (name: string) => void }
export const InHandContext = createContext<InHand | null>(null)

export function useInHand(): InHand & { readonly opened: Opened } {
  const hand = useContext(InHandContext)
  if (hand === null) throw new Error('no conversion is in hand here')
  const opened = useSyncExternalStore(hand.conversion.subscribe, hand.conversion.snapshot)
  return { ...hand, opened }
}

/** The same without hearing of every change: for what is on a page a hundred times. */
export function useHand(): InHand {
  const hand = useContext(InHandContext)
  if (hand === null) throw new Error('no conversion is in hand here')
  return hand
}
/** Whether the server is away: then nothing can be changed. */
export function useAway(): boolean {
  const { conversion } = useHand()
  return useSyncExternalStore(conversion.subscribe, () => ['server away', 'not there'].includes(conversion.snapshot().saving))
}
/**
 * What one part of a page needs of the conversion, and nothing more: it is laid out anew only when that is another value. `pick` gives what the
 * conversion holds, never something made on the way.
 */
export function useOf<T>(pick: (opened: Opened) => T): T {
  const { conversion } = useHand()
  return useSyncExternalStore(conversion.subscribe, () => pick(conversion.snapshot()))
}
