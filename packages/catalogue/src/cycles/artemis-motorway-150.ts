import { AFTER, BEFORE, FAST_150 } from './artemis-motorway-tables.ts'
import { type Cycle, lazily, measuredEverySecond } from './cycle.ts'

/** Motorway Artemis cycle in its 150 km/h variant, from real driving; no approval cycle. */
export const artemisMotorway150: () => Cycle = lazily(() => ({
  id: 'artemis-motorway-150',
  label: 'Artemis motorway, 150 km/h',
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
  published: { duration: 1068, distance: 29547, max: 150.4 / 3.6 },
  ...measuredEverySecond([BEFORE, FAST_150, AFTER], '0.1 km/h'),
}))
