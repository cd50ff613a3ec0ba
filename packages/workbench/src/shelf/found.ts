import type { ShelfLine } from './shelf-view.ts'

export type ShelfSearch = {
  readonly words?: string
  /** A class of parts, or `none` for what has no record. */
  readonly class?: string
  /** Pieces kept for no car, or those kept for one, by the name of the car. */
  readonly kept?: 'free' | { readonly car: string }
}

/** The pieces that have all of the words in what they are, where they lie and whom they are kept for, of a class, free or kept. */
export function shelfFound<L extends ShelfLine>(pieces: readonly L[], { words = '', class: only, kept }: ShelfSearch): readonly L[] {
  const wanted = lower(words).split(/\s+/).filter(Boolean)
  return pieces.filter(
    p =>
      (only === undefined || (p.class ?? 'none') === only) &&
      (kept === undefined || (kept === 'free' ? p.reserved === undefined : p.reserved?.car === kept.car)) &&
      wanted.every(word => said(p).includes(word)),
  )
}

const lower = (text: string): string => text.normalize('NFC').toLowerCase()
const said = (p: ShelfLine): string =>
  lower([p.key, p.label, p.part, p.serial, p.from, p.place, p.condition, p.note, p.reserved?.car].filter(Boolean).join(' '))
