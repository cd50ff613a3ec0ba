import { type MotorLaw, motorLosses } from '../../studies/drive/motor-losses.ts'
import { isGaps } from '../../studies/study.ts'
import { standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const OFF = standard('efficiency-off-the-law', 'efficiency of a point off the law of losses', 'ε', 0.02, '1', {
  work: 'practice',
  place: 'what rounding on a sheet, reading off a chart and field weakening explain',
  mark: 'common practice',
})

export const efficiencyPointsAgree = rule({
  id: 'efficiency-points-agree',
  title: 'Points of efficiency of a motor agree with one law of losses',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'sheets mix the motor alone with motor and inverter, and several voltages' },
  judgements: (m, ask) => {
    const answer = ask(motorLosses),
      with_ = Object.entries(m.drive.units).filter(([, u]) => Object.keys(u.motor.efficiencyPoints).length > 0)
    if (isGaps(answer) || with_.length === 0) return doesNotApply('no motor has points of efficiency', ['drive.units'])
    return with_.map(([item]): Judgement => {
      const law = answer.units[item] as MotorLaw | null | undefined,
        path = `drive.units.${item}.motor.efficiency-points`
      const look = (at: string) => [
        { do: 'measure' as const, says: 'Look up the points again, of exactly this motor with its inverter, at one voltage.', path: at },
      ]
      if (!law || isGaps(law))
        return {
          item,
          about: [path],
          says: 'The points give no law of losses, so the shape of its class stands in.',
          missing: law ?? { gaps: [] },
          remedies: look(path),
        }
      return {
        item,
        about: [path, law.farthest.path],
        found: law.greatest,
        side: 'at most',
        limit: OFF,
        says: `Its point ${law.farthest.name} lies {found} off the law that comes nearest to all of them; up to {limit} is rounding and reading.${said(law)}`,
        remedies: look(law.farthest.path),
      }
    })
  },
  spoil: { sample: 'badger', edits: [{ path: 'drive.units.main.motor.efficiency-points.town.efficiency', now: '70 %' }], item: 'main' },
})

/** What the fit had to hold, or could not see. */
const said = ({ held, constant }: MotorLaw): string =>
  (held.length ? ` Held at zero, as the points alone would put it below nothing: ${held.join(', ')}.` : '') +
  (constant ? '' : ' The points do not show a constant loss; it is left out.')
