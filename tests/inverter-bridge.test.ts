import { applyEdit } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { assessText, leafPaths, textOf } from './cars.ts'

const BRIDGE = 'drive.units.front.inverter.bridge',
  WHOLE = 'drive.units.front.inverter.efficiency'
/** What the loss factor of the motor rests on after an edit of the hatchback, and the questions then open. */
function after(path?: string, now: string | null = null) {
  const edit = path === undefined ? undefined : applyEdit(textOf('wren'), { path, now })
  if (edit && !edit.ok) throw new Error(edit.problem.what)
  const { assessment } = assessText(edit?.text ?? textOf('wren'))
  return { rests: leafPaths(assessment).get('unit.loss-factor@front') ?? new Set<string>(), open: assessment.gaps.map(g => g.path) }
}

describe('the efficiency of an inverter', () => {
  it('is worked out from the sheet of its power module where nobody stated it', () => {
    const { rests } = after()
    expect(rests).toContain(`${BRIDGE}.frequency`)
    expect(rests).not.toContain(WHOLE)
  })
  it('goes back to that of its class, shown as assumed, while the sheet lacks something; what it lacks is asked for', () => {
    const { rests, open } = after(`${BRIDGE}.frequency`)
    expect(rests).toContain(WHOLE)
    expect(rests).not.toContain(`${BRIDGE}.resistance`)
    expect(open).toContain(`${BRIDGE}.frequency`)
  })
  it('is as stated where somebody stated it', () => {
    const { rests } = after(WHOLE, '97.5 %')
    expect(rests).toContain(WHOLE)
    expect(rests).not.toContain(`${BRIDGE}.frequency`)
  })
})
