import type { Edit } from '@ampwright/conversion'
import { isGap, type Model } from '@ampwright/engine'

/** Handles of shapes that go stay where they are, and are part of nothing then. */
export const handlesLeft = ({ fit: { handles } }: Model, going: readonly string[]): readonly Edit[] =>
  Object.entries(handles).flatMap(([name, h]) =>
    h && !isGap(h.partOf) && going.includes(h.partOf.value) ? [{ path: ['fit', 'handles', name, 'part-of'], now: null }] : [],
  )

/** Battery boxes of the circuit stay in it where a box of the pack goes, and ask then which box they are. */
export const boxesLeftOpen = ({ highVoltage: { parts } }: Model, going: readonly string[]): readonly Edit[] =>
  Object.entries(parts).flatMap(([name, p]) =>
    p?.kind === 'battery box' && !isGap(p.box) && going.includes(p.box.value)
      ? [{ path: ['high-voltage', 'parts', name, 'box'], now: null }]
      : [],
  )
