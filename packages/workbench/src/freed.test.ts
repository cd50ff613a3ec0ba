import { applyEdits, readConversion } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, lookUps, textOf } from '../../../tests/cars.ts'
import { Desk } from './desk/desk.ts'
import { freed } from './freed.ts'

const lapwing = conversionOf(textOf('lapwing')),
  out = (...paths: string[]) => paths.map(path => ({ path, now: null }))

describe('what goes along with an entry that is taken out', () => {
  it('is the shape of a part, whose handle then stands by itself', () => {
    expect(freed(lapwing, out('donor.added.charger'))).toEqual(out('fit.bodies.charger'))
    expect(freed(lapwing, out('donor.added.junction-box'))).toEqual(out('fit.handles.service-plug.part-of', 'fit.bodies.junction-box'))
    expect(freed(lapwing, out('pack.boxes.boot'))).toEqual(out('high-voltage.parts.boot.box', 'fit.bodies.boot-box'))
    expect(freed(lapwing, out('drive.units.main'))).toEqual(
      out('high-voltage.parts.inverter.unit', 'fit.bodies.motor', 'fit.bodies.inverter'),
    )
  })
  it('is the name of a space, not what stands in it', () => {
    const paths = freed(lapwing, out('fit.spaces.boot')).map(e => String(e.path))
    expect(paths).toContain('fit.bodies.charger.space')
    expect(paths.every(p => p.startsWith('fit.') && p.endsWith('.space'))).toBe(true)
  })
  it('is nothing for what nobody names, nor for an edit that takes nothing out', () => {
    expect(freed(lapwing, out('donor.removed.engine', 'fit.lift'))).toEqual([])
    expect(freed(lapwing, [{ path: 'donor.added.charger.mass', now: '8 kg' }])).toEqual([])
  })
  it('leaves a file that reads well, for everything a shape stands for or a space in any sample', () => {
    for (const car of CARS) {
      const text = textOf(car),
        c = conversionOf(text)
      for (const map of ['donor.added', 'pack.boxes', 'drive.units', 'fit.spaces', 'fit.bodies', 'high-voltage.parts']) {
        const names = [...new Set(c.references.filter(r => r.to.includes(map) && /^(?:fit|high-voltage)\./.test(r.path)).map(r => r.name))]
        for (const name of names) {
          const going = out(`${map}.${name}`),
            done = applyEdits(text, [...freed(c, going), ...going])
          if (!done.ok) throw new Error(`${car}, ${name}: ${done.problem.what}`)
          const lost = readConversion(done.text, { lookUps }).issues.filter(
            i => i.what.startsWith('names something') && /^(?:fit|high-voltage)\./.test(i.path),
          )
          expect(lost, `${car}, ${name}`).toEqual([])
        }
      }
    }
  })
  it('goes in one batch, before what it names', () => {
    const made = new Desk(textOf('lapwing'), {}).edit(out('donor.added.junction-box'), true)
    if (!made.ok) throw new Error(made.issues[0]?.what)
    expect(made.edits.map(e => e.path)).toEqual(['fit.handles.service-plug.part-of', 'fit.bodies.junction-box', 'donor.added.junction-box'])
  })
  it('is not asked of what a goal or a trip names: that stays, and the entry with it', () => {
    const load = conversionOf(textOf('lapwing')).references.find(r => r.to.includes('brief.loads'))
    expect(load).toBeDefined()
    const desk = new Desk(textOf('lapwing'), {}),
      made = desk.edit(out(`brief.loads.${load?.name}`), true)
    expect(made.ok ? [] : made.issues.map(i => i.path)).toContain(load?.path)
  })
})
