import type { Kind } from '@ampwright/drawing'
import type { Stage } from '@ampwright/engine'
import type { Section } from '../worker/service.ts'

/** A page of the job: which sections of the file are decided there, and which stages of the engine follow from them. */
export type Page = {
  readonly slug: string
  readonly title: string
  readonly lede: string
  readonly sections: readonly Section[]
  readonly stage: Stage
  /** Kinds of drawing that belong there. */
  readonly drawings: readonly Kind[]
  /** Tables of studies that are read there, by id. */
  readonly tables?: readonly string[]
}
export const STAGE_PAGES: readonly Page[] = [
  {
    slug: 'brief',
    title: 'Brief',
    lede: 'What the finished car must do, for whom, and under whose rules it is approved. Whoever signs is asked before the first part is bought.',
    sections: ['brief'],
    stage: 'brief',
    drawings: [],
  },
  {
    slug: 'donor',
    title: 'Donor',
    lede: 'The car as it was: what it weighs and where, what comes out, what goes in. Some of it can only be measured while the engine still runs.',
    sections: ['donor'],
    stage: 'donor',
    drawings: [],
  },
  {
    slug: 'drive',
    title: 'Drive',
    lede: 'How torque gets from the motor to the wheels, and whether the total ratio suits both the motor and the road.',
    sections: ['drive'],
    stage: 'drive',
    drawings: ['tractive force', 'ratio window', 'acceleration', 'motor curves'],
  },
  {
    slug: 'pack',
    title: 'Pack, trips and charging',
    lede: 'Cells and modules, what they give in the cold, how far they carry the car, and what the socket puts back.',
    sections: ['pack', 'trips', 'charging'],
    stage: 'pack',
    drawings: ['range table', 'range by speed', 'energy flow', 'trip', 'voltage window', 'charge'],
  },
  {
    slug: 'fit',
    title: 'Fit',
    lede: 'Where everything goes, in three dimensions: what fits, what can be reached, what stays clear, and how the car then stands on its wheels.',
    sections: ['fit'],
    stage: 'fit',
    drawings: ['view of the car', 'battery box'],
    tables: [
      'mass-ledger.things',
      'wheel-load.wheels',
      'finished.stripped-against',
      'finished.against',
      'finished.unsure',
      'way-in.ways',
      'reach.handles',
      'fixing.fixings',
      'fixing-point.points',
      'shell.cut-list',
    ],
  },
  {
    slug: 'high-voltage',
    title: 'High voltage',
    lede: 'The circuit from cell to motor and charger, looked over before it is built: what is joined to what, what parts it from the batteries, what melts before a wire does. A pack cannot be switched off: leave work on it to those qualified for it.',
    sections: ['high-voltage'],
    stage: 'high voltage',
    drawings: [],
    tables: ['wire.schedule', 'protection.list', 'circuit.parts'],
  },
  {
    slug: 'brakes-steering',
    title: 'Brakes & steering',
    lede: 'Whether it stops, holds and steers under its new mass: how the axles share, what the motors add, what is left when the assist dies. Take a print of the roller tester before the engine comes out.',
    sections: ['brakes', 'steering'],
    stage: 'brakes & steering',
    drawings: ['brake forces', 'grip used'],
    tables: ['print.prints'],
  },
]
export const PAGES: Readonly<Record<string, Page | undefined>> = Object.fromEntries(STAGE_PAGES.map(p => [p.slug, p]))

/** The page a path of the file is filled in on. */
export const pageOf = (path: string): Page | undefined =>
  STAGE_PAGES.find(p => p.sections.some(s => path === s || path.startsWith(`${s}.`)))
