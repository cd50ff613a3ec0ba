import { filling, type Part, partClasses } from '@ampwright/catalogue'
import { isGap, type Model } from '@ampwright/engine'
import type { ConceptKind } from './layouts.ts'
import type { PackRung } from './pack-rungs.ts'
import { ofClass } from './planned.ts'

/** A part beside motor, pack and charger: the name it gets in the list, and what its line says. */
export type PutIn = { readonly name: string; readonly row: Readonly<Record<string, string>>; readonly called: RegExp }

/** The smallest of a class. */
const smallest = (name: string): Part => partClasses.find(c => c.class === name)?.parts[0] as Part
const chosen = (name: string, cls: string, called: RegExp): PutIn => ({ name, called, row: { part: smallest(cls).id } })

/** A BMS has a place of its own for what it does, none for what it weighs: its class says. */
function bms(cells: number, string: number): PutIn {
  const fields = filling(bmsFor(cells))
  return {
    name: string === 0 ? 'bms' : `bms-of-string-${string + 1}`,
    called: /bms|battery-management/i,
    row: Object.fromEntries(['mass', 'price'].flatMap(key => (fields[key] ? [[key, ofClass(fields[key], 'BMS')]] : []))),
  }
}
/** The smallest BMS that watches so many cells. */
export const bmsFor = (cells: number): Part => {
  const parts = partClasses.find(c => c.class === 'bms')?.parts as readonly Part[]
  return parts.find(p => Number(p.fields['cells']?.text) >= cells) ?? (parts.at(-1) as Part)
}

const STARTER = /starter-?battery|12-?v.*battery/i
/** What every conversion needs beside motor, pack and charger, and what takes the place of what the engine drove. */
export function putIns({ donor }: Model, kind: ConceptKind, pack: PackRung): readonly PutIn[] {
  const vacuum = !isGap(donor.brakes.assist) && donor.brakes.assist.value === 'vacuum',
    hydraulic = !isGap(donor.steering.assist) && donor.steering.assist.value === 'hydraulic',
    starter = Object.keys(donor.removed).some(name => STARTER.test(name))
  return [
    chosen('dc-dc', 'dc-dc', /dc-?dc/i),
    chosen('junction-box', 'junction-box', /junction|distribution/i),
    ...Array.from({ length: pack.strings }, (_, i) => bms(pack.cells, i)),
    chosen('cooling-pump', 'coolant-pump', /cool/i),
    chosen('cooling-radiator', 'radiator', /cool|radiator/i),
    chosen('cabin-heater', 'coolant-heater', /heat/i),
    ...(kind.keeps.includes('gearbox') ? [chosen('adapter-and-coupler', 'adapter-coupler', /adapter|coupler/i)] : []),
    ...(starter ? [chosen('starter-battery', 'battery-12v', STARTER)] : []),
    ...(vacuum ? [chosen('vacuum-pump', 'vacuum-pump', /vacuum/i)] : []),
    ...(hydraulic ? [chosen('steering-pump', 'steering-electro-hydraulic', /steering/i)] : []),
  ]
}
