import { artemisMotorway130 } from './artemis-motorway-130.ts'
import { artemisMotorway150 } from './artemis-motorway-150.ts'
import { artemisRural } from './artemis-rural.ts'
import { artemisUrban } from './artemis-urban.ts'
import type { Cycle } from './cycle.ts'
import { hwfet } from './hwfet.ts'
import { nedc } from './nedc.ts'
import { udds } from './udds.ts'
import { us06 } from './us06.ts'
import { wltc3a } from './wltc-3a.ts'
import { wltc3b } from './wltc-3b.ts'

/** The standard cycles by id; each is made when first called. */
export const cycles = {
  'wltc-3b': wltc3b,
  'wltc-3a': wltc3a,
  udds,
  hwfet,
  us06,
  nedc,
  'artemis-urban': artemisUrban,
  'artemis-rural': artemisRural,
  'artemis-motorway-130': artemisMotorway130,
  'artemis-motorway-150': artemisMotorway150,
} as const satisfies Readonly<Record<string, () => Cycle>>

export type CycleId = keyof typeof cycles
/** Whether a word names one of the cycles. */
export const isCycleId = (word: string): word is CycleId => Object.hasOwn(cycles, word)
