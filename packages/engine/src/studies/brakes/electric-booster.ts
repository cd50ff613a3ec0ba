import { electricBoosterPower } from '../../brakes/powered-booster.ts'
import { type Figure, isGap, standard } from '../../working/value.ts'
import { study } from '../study.ts'

/** The 12 V supply at its lowest: nominal, a DC-DC that holds more takes less current. */
export const TWELVE_VOLTS = {
  ...standard('supply-12-volts', '12 V supply, nominal', 'U', 12, 'V', { work: 'definition', place: 'nominal voltage' }),
  shows: 'voltage',
} as const

/** What an electric booster takes from the 12 V supply in a hard stop. */
export const electricBooster = study({
  id: 'electric-booster',
  stage: 'brakes & steering',
  asks: 'What does the electric booster draw in a hard stop?',
  reads: m => {
    const after = m.donor.brakes.assistAfter,
      b = m.brakes.electricBooster
    return !isGap(after) && after.value === 'electric booster' ? { assist: b.force, speed: b.rodSpeed, efficiency: b.efficiency } : null
  },
  answer: (k, make): { current: Figure } | null =>
    k === null
      ? null
      : make.all(
          '',
          electricBoosterPower,
          { ...k, voltage: TWELVE_VOLTS },
          { labels: { power: 'Power of the electric booster', current: 'Current of the electric booster' } },
        ).figures,
})
