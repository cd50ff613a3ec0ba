import { type Answers, isGap, type ScanTask, type Surveys, scansOf, scanTasks } from '@ampwright/engine'
import { shownNumber } from '../shown.ts'
import type { System } from '@ampwright/conversion'

/** A scan the file names, as a screen needs it: what is to be measured of it, once it is known how it lies. */
export type ScanNamed = {
  readonly scan: string
  readonly file: string
  /** Fingerprint of the file. */
  readonly mark: string
  readonly unit?: 'mm' | 'cm' | 'm' | 'in' | 'ft'
  readonly points: readonly string[]
  readonly task?: ScanTask
}
/** What was measured of a scan, as it is told. */
export type ScanTold = {
  readonly fault?: string
  readonly leftOver?: string
  /** What each point left over, in the order of their names. */
  readonly each: readonly string[]
  readonly noSpace?: string
}

export function scansNamed(answers: Answers): readonly ScanNamed[] {
  const m = answers.current(),
    tasks = scanTasks(m, answers.ask)
  return scansOf(m).flatMap(([scan, { file, unit, points }]): ScanNamed[] => {
    if (isGap(file)) return []
    const task = tasks.find(t => t.scan === scan)
    return [
      {
        scan,
        file: file.text ?? '',
        mark: file.value,
        ...(isGap(unit) ? {} : { unit: unit.value }),
        points: Object.keys(points).sort(),
        ...(task ? { task } : {}),
      },
    ]
  })
}

/** Surveys for people, by name of the scan. */
export const scansTold = (surveys: Surveys, system: System): Readonly<Record<string, ScanTold>> =>
  Object.fromEntries(
    Object.entries(surveys).map(([name, s]): [string, ScanTold] => {
      const length = (m: number): string => shownNumber(m, 'length', 'm', system)
      return [
        name,
        {
          ...(s.fault === undefined ? { leftOver: length(s.residual) } : { fault: s.fault }),
          each: s.residuals.map(length),
          ...(s.noSpace === undefined ? {} : { noSpace: s.noSpace }),
        },
      ]
    }),
  )
