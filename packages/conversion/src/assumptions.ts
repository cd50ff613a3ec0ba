import { classGrip, classCentreHeight, classRollingResistance, classDrivelineEfficiency, classRollingFactor, classWheelInertia, type ClassValue } from '@ampwright/engine'
import type { Assumption, Near } from './schema/field.ts'

const offered = (c: ClassValue | undefined): Assumption | undefined => c && { value: c.value, half: c.half, note: c.note, source: c.source }

/** Rolling resistance of the whole car by body, where no coast-down and no tyre label say better. */
export const rollingResistance = (near: Near): Assumption | undefined => offered(classRollingResistance(near.word('donor.body')))
/** Height of the centre of mass by body. */
export const centreHeight = (near: Near): Assumption | undefined => offered(classCentreHeight(near.word('donor.body')))
/** Grip by surface. */
export const grip = (surface: 'dry' | 'wet' | 'gravel' | 'snow') => (): Assumption | undefined => offered(classGrip(surface))
/** Motor to wheel, by the way the torque takes. */
export const drivelineEfficiency = (near: Near): Assumption | undefined => offered(classDrivelineEfficiency(near.word('./through'), near.word('./transfer')))
/** Rolling resistance of a surface against dry asphalt. */
export const rollingFactor = (surface: 'wet' | 'gravel' | 'snow') => (): Assumption | undefined => offered(classRollingFactor(surface))
/** One wheel of a passenger car. */
export const wheelInertia = (near: Near): Assumption | undefined => offered(classWheelInertia(near.word('donor.body')))
