/*
 * What has to be known before the first part is bought: the rows of gate B beside the figures of a plan. Pure functions, SI in, plain
 * results out; outcomes and words are made elsewhere.
 */
export type { Answer, Band, Caveat, Comparison, Item, MarginalReason, NotCompared, Role, Statement } from './comparison.ts'
export { type CalendarDate, donorAge, donorBuilt, donorConditions, donorGross, seats } from './donor-eligibility.ts'
export {
  type AxleMasses,
  axleMassBand,
  axleShare,
  frontAxleRise,
  type KerbMasses,
  kerbMassChange,
  kerbMassRatio,
  type MassBasis,
  massInRunningOrder,
} from './mass-band.ts'
export { type LadenMasses, ladenMasses, permittedMasses, type Ratings } from './mass-ratings.ts'
export {
  continuousPowerRatio,
  type DrivelinePlan,
  type PowerPlan,
  powerChange,
  powerRatio,
  powerToWeightRise,
  type TorquePlan,
  torqueRatio,
} from './power-band.ts'
export { lawInTime, makeInoperative, registerTriggers, type SingleCar, signatures, singleCar } from './route.ts'
export { speedometerReading, topSpeedDrop } from './speed-band.ts'
