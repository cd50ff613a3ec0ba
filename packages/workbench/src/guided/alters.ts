import { isGap, type Model } from '@ampwright/engine'
import type { ConceptKind, Way } from './layouts.ts'

/** What is cut, made or left alone, in the words of the trade; every line is common practice. */
export type Alters = { readonly says: string; readonly how: 'stays' | 'comes out' | 'is made' | 'is altered' }

const stays = (says: string): Alters => ({ says, how: 'stays' })
const out = (says: string): Alters => ({ says, how: 'comes out' })
const made = (says: string): Alters => ({ says, how: 'is made' })
const altered = (says: string): Alters => ({ says, how: 'is altered' })

const BY_WAY: Readonly<Record<Way, readonly Alters[]>> = {
  'drive unit': [
    out('engine and gearbox'),
    made('a cradle with rubber mounts for the unit, on the old engine mounts where they suit'),
    made('two half-shafts, each made from two: outer end of the car, inner end of the unit'),
    stays('tunnel untouched'),
  ],
  'kept gearbox, one gear': [
    out('engine, clutch and flywheel'),
    made('adapter plate and coupler between motor and gearbox'),
    made('motor mounts on rubber; the mounts of engine and gearbox stay'),
    stays('gearbox and all behind it, tunnel untouched'),
  ],
  'kept gearbox, shifting': [
    out('engine'),
    made('adapter plate, and a hub that carries flywheel and clutch on the motor shaft'),
    made('motor mounts on rubber; the mounts of engine and gearbox stay'),
    stays('clutch, gearbox and all behind it, tunnel untouched'),
  ],
  'single reduction': [
    out('engine and gearbox'),
    made('mounts on rubber for motor and reduction, where engine and gearbox hung'),
    altered('first shaft behind it: new length, new flange, balanced again'),
    stays('axle as it was'),
  ],
  'two drive units': [
    out('engine, gearbox, propshaft and rear axle drive'),
    made('a cradle for each unit, on rubber mounts; the rear one may need holes or brackets in the body'),
    made('four half-shafts, each made from two'),
  ],
}

/** What a concept does to the car. */
export function alters(m: Model, kind: ConceptKind): readonly Alters[] {
  const { brakes, steering } = m.donor,
    boxes = Object.values(m.pack.boxes).flatMap(b => (isGap(b.where) ? [] : [b.where.value]))
  return [
    ...BY_WAY[kind.way],
    ...(kind.transfer ? [stays('transfer case, both ranges')] : []),
    out('exhaust, fuel tank and lines, engine cooling'),
    ...(boxes.includes('engine bay') ? [made('battery box where the engine was, on brackets to old mounting points')] : []),
    ...(boxes.includes('tank space')
      ? [made('battery box in the space of the tank, bolted to the body: ask whether new holes count as altered body')]
      : []),
    ...(!isGap(brakes.assist) && brakes.assist.value === 'vacuum' ? [altered('brake assist: electric vacuum pump with reservoir')] : []),
    ...(!isGap(steering.assist) && steering.assist.value === 'hydraulic' ? [altered('steering assist: electric pump')] : []),
  ]
}
