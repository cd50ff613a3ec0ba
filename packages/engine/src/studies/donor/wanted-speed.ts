import type { Model } from '../../model/model.ts'
import { type Field, isGap } from '../../working/value.ts'

const WANTED = {
  gap: true as const,
  path: 'brief.goals',
  label: 'a goal of kind top speed',
  until: 'any time' as const,
  why: 'missing' as const,
}

/** The highest top speed the brief asks for. */
export function wantedSpeed(m: Model): Field {
  const goals = Object.values(m.brief.goals).flatMap(g => (g?.kind === 'top speed' ? [g.speed] : []))
  return goals.length === 0 ? WANTED : (goals.find(isGap) ?? goals.reduce((a, b) => (!isGap(a) && !isGap(b) && b.value > a.value ? b : a)))
}
