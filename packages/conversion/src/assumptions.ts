import {
  BOX_CONDUCTANCE,
  BOX_SHARE,
  CHARGE_RATE,
  type ClassCurve,
  type ClassValue,
  classBestEfficiency,
  classBrakeCooling,
  classCell,
  classCentreHeight,
  classChargerEfficiency,
  classChargerLoss,
  classColumnEfficiency,
  classCoolant,
  classDragArea,
  classDragCoefficient,
  classDrivelineEfficiency,
  classDriverTorque,
  classGearEfficiency,
  classGrip,
  classHandwheelTurns,
  classInputInertia,
  classInverterEfficiency,
  classJacket,
  classLinkageEfficiency,
  classLossFactor,
  classRackLeakage,
  classRollingFactor,
  classRollingResistance,
  classRollingShare,
  classRotorInertia,
  classShiftTime,
  classStandingPower,
  classTaper,
  classWheelInertia,
  classWindingLimit,
  GEAR_DRAG,
  GEAR_DRAG_AT_TOP,
  HEALTH,
  LOADED_SHARE,
  REFERENCE_AIR,
  UNTESTED,
  WIRING,
} from '@ampwright/engine'
import type { Assumption, CurveAssumption, Near } from './schema/field.ts'

const offered = (c: ClassValue | undefined): Assumption | undefined => c && { value: c.value, half: c.half, note: c.note, source: c.source }

/** Rolling resistance of the whole car by body, where no coast-down and no tyre label say better. */
export const rollingResistance = (near: Near): Assumption | undefined => offered(classRollingResistance(near.word('donor.body')))
/** Height of the centre of mass by body. */
export const centreHeight = (near: Near): Assumption | undefined => offered(classCentreHeight(near.word('donor.body')))
/** Grip by surface. */
export const grip = (surface: 'dry' | 'wet' | 'gravel' | 'snow') => (): Assumption | undefined => offered(classGrip(surface))
/** Motor to wheel, by the way the torque takes. */
export const drivelineEfficiency = (near: Near): Assumption | undefined =>
  offered(classDrivelineEfficiency(near.word('./through'), near.word('./transfer')))
/** Gears and bearings turned without load. */
export const gearDrag = (): Assumption | undefined => offered(GEAR_DRAG)
export const gearDragAtTop = (): Assumption | undefined => offered(GEAR_DRAG_AT_TOP)
/** Rolling resistance of a surface against dry asphalt. */
export const rollingFactor = (surface: 'wet' | 'gravel' | 'snow') => (): Assumption | undefined => offered(classRollingFactor(surface))
/** One wheel of a passenger car. */
export const wheelInertia = (near: Near): Assumption | undefined => offered(classWheelInertia(near.word('donor.body')))
/** Best efficiency of a motor by its kind. */
export const bestEfficiency = (near: Near): Assumption | undefined => offered(classBestEfficiency(near.word('./kind')))
export const inverterEfficiency = (): Assumption | undefined => offered(classInverterEfficiency())
/** One motor's losses against its class or map. */
export const lossFactor = (): Assumption | undefined => offered(classLossFactor())
export const rotorInertia = (): Assumption | undefined => offered(classRotorInertia())
export const windingLimit = (): Assumption | undefined => offered(classWindingLimit())
export const coolantTemperature = (): Assumption | undefined => offered(classCoolant())
/** A part of a few kilograms that has no place yet: somewhere between the axles. Motors and battery boxes are decisions and stay gaps. */
export const placeOfSmallPart = (near: Near): Assumption | undefined => {
  const wheelbase = near.value('donor.wheelbase')
  return wheelbase === undefined
    ? undefined
    : {
        value: wheelbase / 2,
        half: wheelbase / 2,
        note: 'somewhere between the axles',
        source: { work: 'practice', place: 'small parts stand between the axles', mark: 'common practice' },
      }
}
/** How far off the centre line a part may stand whose side nobody has said: anywhere in the middle half of the track. */
export const placeAcross = (near: Near): Assumption | undefined => {
  const track = near.value('donor.track-front')
  return track === undefined
    ? undefined
    : {
        value: 0,
        half: track / 4,
        note: 'in the middle half of the car',
        source: { work: 'practice', place: 'parts stand about the centre line', mark: 'common practice' },
      }
}
/** Time without pull in one gear change. */
export const shiftTime = (near: Near): Assumption | undefined => offered(classShiftTime(near.word('./shifting')))

const cellOf = (near: Near) => classCell(near.word('./chemistry'))
const offeredCurve = (c: ClassCurve | undefined): CurveAssumption | undefined => c && { value: c.value, note: c.note, source: c.source }
/** A cell of known chemistry and nothing else: curves and values measured on cells of that kind. */
export const openCircuit = (near: Near): CurveAssumption | undefined => offeredCurve(cellOf(near)?.openCircuit)
export const resistanceOverCharge = (near: Near): CurveAssumption | undefined => offeredCurve(cellOf(near)?.resistanceOverCharge)
export const coldEnergy = (near: Near): CurveAssumption | undefined => offeredCurve(cellOf(near)?.coldEnergy)
/** The planning line keeps graphite from plating; titanate does not plate, and only its maker's sheet says what it takes in the cold. */
export const chargeTable = (near: Near): CurveAssumption | undefined =>
  cellOf(near) && near.word('./chemistry') !== 'LTO' ? offeredCurve(CHARGE_RATE) : undefined
export const dropAtHourRate = (near: Near): Assumption | undefined => offered(cellOf(near)?.dropAtHourRate)
export const branchShare = (near: Near): Assumption | undefined => offered(cellOf(near)?.branchShare)
export const branchTime = (near: Near): Assumption | undefined => offered(cellOf(near)?.branchTime)
export const coldCoefficient = (near: Near): Assumption | undefined => offered(cellOf(near)?.coldCoefficient)
/** Capacity against new by whether the modules are new or used. */
export function health(near: Near): Assumption | undefined {
  const state = near.word('./state')
  return state === 'new' || state === 'used' ? offered(HEALTH[state]) : undefined
}
export const againstOthers = (): Assumption | undefined => offered(UNTESTED)
export const wiringResistance = (): Assumption | undefined => offered(WIRING)
export const boxShare = (): Assumption | undefined => offered(BOX_SHARE)
export const boxConductance = (): Assumption | undefined => offered(BOX_CONDUCTANCE)
/** Flywheel and clutch, where they stay. */
export const inputInertia = (): Assumption | undefined => offered(classInputInertia())
/** Published road-load coefficients hold at the reference air of the test procedure where they say nothing else; runs of one's own do not. */
export const coastDownTemperature = (near: Near): Assumption | undefined =>
  near.word('./f0') === undefined ? undefined : offered(REFERENCE_AIR.temperature)
export const coastDownPressure = (near: Near): Assumption | undefined =>
  near.word('./f0') === undefined ? undefined : offered(REFERENCE_AIR.pressure)
/** Standing wheel. */
export const loadedShare = (): Assumption | undefined => offered(LOADED_SHARE)
/** The old engine's way to the wheels: gearbox and axle, and a transfer case where there is one. */
export const oldEfficiency = (near: Near): Assumption | undefined =>
  offered(classDrivelineEfficiency('kept gearbox', near.word('donor.transfer-case.high') === undefined ? 'none' : 'high'))
/** Charger from wall to pack, and what the car draws beside it while charging. */
export const chargerEfficiency = (): Assumption | undefined => offered(classChargerEfficiency())
/** How a charger's loss at full power splits over its power. */
export const chargerFixedLoss = (): Assumption | undefined => offered(classChargerLoss.fixed)
export const chargerSquareLoss = (): Assumption | undefined => offered(classChargerLoss.square)
export const standingPower = (): Assumption | undefined => offered(classStandingPower())
/** How the charging current falls towards full, by chemistry. */
export const chargeTaper = (near: Near): CurveAssumption | undefined => offeredCurve(classTaper(near.word('pack.module.chemistry')))
/** Drag area by body, where nobody knows the car's own and its sizes were not measured. */
export const dragArea = (near: Near): Assumption | undefined => offered(classDragArea(near.word('donor.body')))
export const dragCoefficient = (near: Near): Assumption | undefined =>
  offered(classDragCoefficient(near.word('donor.body'), near.word('donor.first-registered')))
/** What the air takes from a disc or drum. */
export const brakeCooling = (): Assumption | undefined => offered(classBrakeCooling())
/** Steering gear of its kind: what it loses, how it is turned, what assist leaves to the driver. */
export const linkageEfficiency = (): Assumption | undefined => offered(classLinkageEfficiency())
export const gearEfficiency = (): Assumption | undefined => offered(classGearEfficiency())
export const handwheelTurns = (): Assumption | undefined => offered(classHandwheelTurns())
export const rollingShare = (): Assumption | undefined => offered(classRollingShare())
export const rackLeakage = (): Assumption | undefined => offered(classRackLeakage())
export const driverTorque = (): Assumption | undefined => offered(classDriverTorque())
export const columnEfficiency = (): Assumption | undefined => offered(classColumnEfficiency())
/** Cable by its section, where a caliper gauge was not put to it. */
export const jacketDiameter = (near: Near): Assumption | undefined => offered(classJacket(near.value('./section')))
