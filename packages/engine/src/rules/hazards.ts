import type { Stage } from '../studies/study.ts'
import { DRIVE_AND_BODY } from './hazards/drive-and-body.ts'
import { PACK_AND_HIGH_VOLTAGE } from './hazards/pack-and-high-voltage.ts'
import type { Harm } from './rule.ts'

/** What can catch a hazard: a rule on the plan, a step of the tests, or a habit that drawings and settings follow unless somebody changes it. */
export type Catch = 'rule' | 'test' | 'drawing'

/** One way conversions have gone wrong: what happens, to whom, and where in the job it can be caught. */
export type Hazard = {
  readonly id: string
  readonly harm: Harm
  /** Stages it belongs to; the first is where it is decided. */
  readonly stages: readonly Stage[]
  readonly caughtBy: readonly Catch[]
  readonly cause: string
  readonly effect: string
}

const CELLS = 6

function row(line: string): Hazard {
  const cells = line.split('|').map(cell => cell.trim())
  const [id, harm, stages, caughtBy, cause, effect] = cells
  if (cells.length !== CELLS || !id || !harm || !stages || !caughtBy || !cause || !effect)
    throw new SyntaxError(`hazard table: ${CELLS} cells wanted in «${line}»`)
  return { id, harm: harm as Harm, stages: stages.split(', ') as Stage[], caughtBy: caughtBy.split(', ') as Catch[], cause, effect }
}

/** The failure catalogue of the trade, A1 to N3: collected from builders’ reports, accident reports and habit. */
export const HAZARDS: readonly Hazard[] = `${PACK_AND_HIGH_VOLTAGE}${DRIVE_AND_BODY}`
  .split('\n')
  .filter(line => line !== '')
  .map(row)
