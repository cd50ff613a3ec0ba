import { readQuantity, SECTIONS, spellQuantity } from '@ampwright/conversion'
import { Refusal } from './refusal.ts'

export type Start = { name?: string; engine?: string; driven?: string; body?: string; rules?: string; weight?: string }

const fields = SECTIONS.donor.fields
/** What is asked first, and what may be answered. */
export const CHOICES = {
  engine: fields['engine-position'].oneOf,
  driven: fields['driven-wheels'].oneOf,
  body: fields.body.oneOf,
  rules: SECTIONS.brief.fields.rules.oneOf,
} as const
/** The text of a new conversion: what was answered, and the keys to go on with. Nothing is filled in that nobody said. */
export function startText(s: Start): string {
  const line = (indent: string, key: string, value: string | undefined): string =>
    value === undefined ? '' : `${indent}${key}: ${value}\n`
  const weight = s.weight === undefined ? undefined : readQuantity(s.weight, 'mass')
  if (weight && !weight.ok)
    throw new Refusal(`new: --weight: found ${weight.problem.found}, ${weight.problem.why}; accepted ${weight.problem.accepted}`)
  return [
    '# Values are text with a unit: 1180 ± 10 kg (measured, wheel scales). What is missing is asked by: ampwright assess FILE, ampwright survey FILE\n',
    'schema: 1\n',
    line('', 'car', s.name === undefined ? undefined : /^[\p{L}\p{N}][\p{L}\p{N} ._-]*$/u.test(s.name) ? s.name : JSON.stringify(s.name)),
    '\nbrief:\n',
    line('  ', 'rules', s.rules),
    '  goals: {}\n  loads: {}\n',
    '\ndonor:\n',
    line('  ', 'engine-position', s.engine),
    line('  ', 'driven-wheels', s.driven),
    line('  ', 'body', s.body),
    weight
      ? `  # Weighed as a whole: ${spellQuantity(weight.quantity.value, 'mass')}. Axle by axle is wanted, and can only be weighed while the engine is in.\n`
      : '',
    '  weighing: {}\n  removed: {}\n',
    '\ndrive:\n  units: {}\n\npack:\n  boxes: {}\n\ntrips:\n  named: {}\n\ncharging:\n  places: {}\n',
  ].join('')
}
