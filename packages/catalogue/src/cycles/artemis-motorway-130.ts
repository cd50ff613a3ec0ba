import { AFTER, BEFORE, FAST_130 } from './artemis-motorway-tables.ts'
import { type Cycle, lazily, measuredEverySecond } from './cycle.ts'

/** Motorway Artemis cycle in its 130 km/h variant, from real driving; no approval cycle. */
export const artemisMotorway130: () => Cycle = lazily(() => ({
  id: 'artemis-motorway-130',
  label: 'Artemis motorway, 130 km/h',
  source: {
    work: 'M. André, The ARTEMIS European driving cycles for measuring car pollutant emissions, Sci. Total Environ. 334-335 (2004) 73-84',
    place: 'cycle as kept in an open route-planning data set (University College Dublin, 2021)',
    mark: 'from memory',
  },
  confidence: {
    level: 'medium',
    because: 'only duration, distance and top speed were compared with the published totals; no second copy of the trace',
  },
  phases: [],
  published: { duration: 1068, distance: 28737, max: 131.8 / 3.6 },
  ...measuredEverySecond([BEFORE, FAST_130, AFTER], '0.1 km/h'),
}))
