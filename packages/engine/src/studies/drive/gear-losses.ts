import { efficiencyAtLoad, efficiencyOfTeeth, gearDragRise, gearLoss, lightTorque } from '../../drive/gear-loss.ts'
import type { Value } from '../../working/value.ts'
import type { Maker } from '../study.ts'
import type { Envelope } from './envelopes.ts'

/** Drag of gears and bearings at the motor shaft, turned slowly and at the motor's top speed. */
export type GearDrag = { readonly still: Value; readonly atTop: Value }

/** The efficiency stated for full load, taken apart into what goes with the load and what drags without it; and what is left of it at light load. */
export function gearFigures(
  make: Maker,
  e: Envelope,
  { still, atTop }: GearDrag,
  item: string,
): { teeth: Value; gearDrag: Value; gearDragRise: Value } {
  const rise = make.work(
    'gear-drag-rise',
    gearDragRise,
    { still, atTop, topSpeed: e.topSpeed },
    { item, label: `Rise of gear drag with speed, ${item}` },
  )
  const teeth = make.work(
    'teeth',
    efficiencyOfTeeth,
    { efficiency: e.efficiency, still, rise, speed: e.baseSpeed, torque: e.motorTorque },
    { item, label: `Efficiency without the drag, ${item}` },
  )
  const torque = make.work('light-torque', lightTorque, { torque: e.motorTorque }, { item, label: `Torque of ${item} at light load` }),
    speed = e.baseSpeed
  const loss = make.work(
    'gear-loss',
    gearLoss,
    { torque, speed, teeth, still, rise },
    { item, label: `Lost in gears and bearings at light load, ${item}` },
  )
  make.work(
    'light-efficiency',
    efficiencyAtLoad,
    { loss, torque, speed },
    { item, label: `Efficiency at light load, motor to wheels, ${item}` },
  )
  return { teeth, gearDrag: still, gearDragRise: rise }
}
