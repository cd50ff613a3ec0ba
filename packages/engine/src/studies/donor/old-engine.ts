import { roadSpeed } from '../../drive/speeds.ts'
import { totalRatio, wheelForce } from '../../drive/wheel-force.ts'
import { torqueBehind } from '../../vehicle/kept-parts.ts'
import { type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { rolling } from './rolling.ts'

export type OldGear = { readonly ratio: Figure; readonly force: Figure; readonly at: Figure | Gaps; readonly topSpeed: Figure | Gaps }
export type OldEngine = {
  readonly gears: Readonly<Record<string, OldGear>>
  /** Greatest torque the old engine put into transfer case and axle: first gear, low range where there is one. */
  readonly intoTransfer: Figure
  readonly intoAxle: Figure
}
const NO_GEARS: Gap = {
  gap: true,
  path: 'donor.gearbox.gears',
  label: 'gear ratios of the donor car',
  until: 'before the body is apart',
  measure: { tool: 'count turns in and out', accuracy: 'exact tooth ratio', minutes: 20 },
  why: 'missing',
}

/** The old engine as the measure of the new one: pull at the wheels and top speed in each gear. */
export const oldEngine = study({
  id: 'old-engine',
  stage: 'donor',
  asks: 'What did the old engine give at the wheels, gear by gear?',
  reads: ({ donor }, ask) => {
    const names = Object.keys(donor.gearbox.gears),
      box = donor.transferCase,
      driven = donor.drivenWheels
    const twoRanges = !isGap(driven) && driven.value === 'part-time 4x4'
    return {
      names,
      torque: donor.engine.torque,
      redLine: maybe(donor.engine.redLine),
      gears: names.length === 0 ? NO_GEARS : Object.values(donor.gearbox.gears),
      finalDrive: donor.finalDrive,
      // Part-time 4x4: on the road in high range; the worst torque came in low.
      driven,
      high: twoRanges ? box.high : null,
      low: twoRanges ? box.low : null,
      reverse: maybe(donor.gearbox.reverse),
      torqueSpeed: maybe(donor.engine.torqueSpeed),
      efficiency: donor.gearbox.efficiency,
      radius: from(ask(rolling), r => r.radius),
    }
  },
  answer: (k, make): OldEngine => {
    const forward = k.names.map((name, i) => [name, k.gears[i] as Value] as const),
      all = !isGaps(k.reverse) ? [...forward, ['reverse', k.reverse] as const] : forward
    const entries = all.map(([name, gear]): [string, OldGear] => {
      const steps = k.high ? [gear, k.high, k.finalDrive] : [gear, k.finalDrive]
      const ratio = make.work('ratio', totalRatio, { steps }, { item: name, label: `Old total ratio, ${name}` })
      return [
        name,
        {
          ratio,
          force: make.work(
            'force',
            wheelForce,
            { torque: k.torque, ratio, efficiency: k.efficiency, radius: k.radius },
            { item: name, label: `Old engine, greatest pull in ${name}` },
          ),
          at: isGaps(k.torqueSpeed)
            ? k.torqueSpeed
            : make.work(
                'pull-speed',
                roadSpeed,
                { speed: k.torqueSpeed, radius: k.radius, ratio },
                { item: name, label: `Old engine at its greatest torque in ${name}` },
              ),
          topSpeed: isGaps(k.redLine)
            ? k.redLine
            : make.work(
                'speed',
                roadSpeed,
                { speed: k.redLine, radius: k.radius, ratio },
                { item: name, label: `Old engine at the red line in ${name}` },
              ),
        },
      ]
    })
    const first = forward.map(([, gear]) => gear).reduce((a, b) => (b.value > a.value ? b : a))
    const intoTransfer = make.work(
      'into-transfer',
      torqueBehind,
      { torque: k.torque, ratio: first },
      { label: 'Old engine, greatest torque behind the gearbox' },
    )
    make.table('gears', {
      label: 'Old engine, gear by gear',
      columns: [
        { key: 'ratio', label: 'total ratio', unit: '1', shows: 'ratio' },
        { key: 'force', label: 'greatest pull', unit: 'N' },
        { key: 'at', label: 'pulls so at', unit: 'm/s', shows: 'speed' },
        { key: 'speed', label: 'at the red line', unit: 'm/s', shows: 'speed' },
      ],
      rows: entries.map(([name, g]) => ({
        name,
        cells: { ratio: g.ratio, force: g.force, at: isGaps(g.at) ? undefined : g.at, speed: isGaps(g.topSpeed) ? undefined : g.topSpeed },
      })),
    })
    return {
      gears: Object.fromEntries(entries),
      intoTransfer,
      intoAxle: k.low
        ? make.work(
            'into-axle',
            torqueBehind,
            { torque: intoTransfer, ratio: k.low },
            { label: 'Old engine, greatest torque into the axles' },
          )
        : intoTransfer,
    }
  },
})
