import type { Edit } from '@ampwright/conversion'
import { isGap, type Model } from '@ampwright/engine'

/** Handles of shapes that go stay where they are, and are part of nothing then. */
export const handlesLeft = ({ fit: { handles } }: Model, going: readonly string[]): readonly Edit[] =>
  Object.entries(handles).flatMap(([name, h]) =>
    h && !isGap(h.partOf) && going.includes(h.partOf.value) ? [{ path: ['fit', 'handles', name, 'part-of'], now: null }] : [],
  )
