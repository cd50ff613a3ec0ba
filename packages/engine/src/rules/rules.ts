import { brakesWithoutAssist, electricBoosterFuse } from './brakes/assist.ts'
import { brakesStayCool } from './brakes/heat.ts'
import { brakesUseTheGrip, frontLocksFirst } from './brakes/locking.ts'
import { parkedAxleGrips, parkingBrakeHolds, parkingBrakeOnSlope } from './brakes/parking.ts'
import { recoveryOnSnow, stopLampOnRecovery, wheelSensorsKept } from './brakes/recovery.ts'
import { brakeEfficiency, brakesEven } from './brakes/tester.ts'
import { pumpComesToRest, vacuumLasts, vacuumOverrunTold, vacuumSoon } from './brakes/vacuum.ts'
import { partsWithinBudget } from './brief/budget.ts'
import { demandsAgreed, protectionAgreed } from './brief/demands.ts'
import { donorAge, donorBuilt } from './brief/donor-dates.ts'
import { donorCategory, donorGross, donorNotExcluded, donorRegistered, donorRoadworthy, seatsRegistered } from './brief/donor-eligible.ts'
import { datesInOrder, everyoneSits, gearsInOrder, layoutInReason } from './brief/facts-agree.ts'
import { goalsAgree } from './brief/goals-agree.ts'
import { bodyUncut, dimensionsKept, immobiliserPlanned, safetyEquipmentKept } from './brief/kept.ts'
import { axleShare, crashEquivalence, frontAxleRise, kerbMass, kerbMassChange } from './brief/masses.ts'
import { ladenByLaw, permittedMassesApproval, permittedMassesKept } from './brief/permitted-masses.ts'
import { continuousPower, historicPrivilege, powerAgainstDonor, powerChange, torqueAgainstDonor } from './brief/power-and-torque.ts'
import { askedBefore, packApproval, singleCar } from './brief/route.ts'
import { strongerMotorFits } from './brief/stronger-motor.ts'
import { topSpeedKept } from './brief/top-speed-kept.ts'
import { chargerFills, chargerReaches, chargerSetPoint, dcInlet, driveBlocked } from './charging/charger.ts'
import { chargesAsWanted } from './charging/goals.ts'
import { inletContinuous, noExtension, outletContinuous } from './charging/outlet.ts'
import { absKept, brakeAssist, steeringAssist } from './donor/assist.ts'
import { coastDownInReason, coastDownRepeats, roadLoadMeasured } from './donor/baseline.ts'
import { frontShareByLayout } from './donor/front-share.ts'
import { axleTorque, gearboxSpeed, gearboxTorque, transferCaseTorque } from './donor/kept-parts.ts'
import { axlesCarry, ladenMasses, seatsWanted } from './donor/laden-masses.ts'
import { layoutFits } from './donor/layout.ts'
import { recoveryOnWheels } from './donor/recovery.ts'
import { speedometerDriven, speedometerShowsEnough } from './donor/speedometer.ts'
import { tipsNoSooner } from './donor/stability.ts'
import { couplingStrong, noseLoad, stopsWithTrailer, trailerMass, trainMass } from './donor/train.ts'
import { tyreLoad, tyreSpeed } from './donor/tyres.ts'
import { usualPartsListed } from './donor/usual-parts.ts'
import { weighingsAgree } from './donor/weighings.ts'
import { gearedTooShort, gearedTooTall, ratioMeetsAll } from './drive/gearing.ts'
import { accelerationGoal, climbGoal, peakLasts, steadySpeedGoal, topSpeedGoal } from './drive/goals.ts'
import { hillStart } from './drive/hill-start.ts'
import { efficiencyPointsAgree } from './drive/motor-losses.ts'
import { launchGrip, lowRangeOnDry, recoveryGrip } from './drive/on-the-road.ts'
import { couplerTorque, halfShaftTorque, inverterLimits, motorFiguresAgree, reversedRotation } from './drive/parts-of-the-drive.ts'
import { motorOverSpeed, propshaftSpeed } from './drive/turning.ts'
import { aboveTheGround, clearsRamps, standsAsBefore, standsEven, staysOnTheLift } from './fit/balance.ts'
import {
  boxBehindTheEdge,
  boxBreathes,
  boxDrains,
  boxHeld,
  boxSealed,
  boxVents,
  modulesFitTheirBox,
  sheetWithinOverhead,
} from './fit/boxes.ts'
import { clearOfGuards, clearOfHeat, clearOfWheels, insideItsSpace, partsClear } from './fit/clear.ts'
import { lidsReached } from './fit/lids.ts'
import { powerCutInReach } from './fit/power-cut.ts'
import { askedBeforeCutting, facesReached, partsOutsideCabin, protectedFromWater } from './fit/reached.ts'
import { clearOfScans } from './fit/scanned.ts'
import { heavyPartsHaveAShape } from './fit/shapes.ts'
import { meshesAsLargeAsSaid } from './fit/meshes.ts'
import { canBeBroughtIn, canBeLifted } from './fit/way-in.ts'
import { nothingBehindHoles } from './fit/holes.ts'
import { reckonedFromScales, weighsAsReckoned } from './fit/weigh-in.ts'
import { busEmpties, prechargeResistorLasts, prechargeThere } from './high-voltage/bus.ts'
import { circuitVoltage, fuseBreaksShort, fuseGuardsWire, passedThroughCarries, wireCarries } from './high-voltage/ratings.ts'
import { bothPolesSwitched, boxHasOwnFuse, circuitWired, disconnectBreaksString } from './high-voltage/shape.ts'
import {
  bmsFitted,
  bmsLimitsDrive,
  bmsStopsCharger,
  bmsWatchesAll,
  bmsWatchesTemperature,
  chargeCounted,
  noColdCharging,
  shortedCell,
} from './pack/bms.ts'
import {
  cellLimits,
  chargeStops,
  emptyBelowFull,
  everyModulePlaced,
  moduleAlone,
  outsideCabin,
  stringFused,
  stringsAlike,
} from './pack/cells-and-boxes.ts'
import { cellsPressed } from './pack/cells-pressed.ts'
import { chargingCurrent, continuousCurrent, fuseGuardsCells, peakCurrent, peakLastsOut } from './pack/currents.ts'
import { fuseAndContactorCarry } from './pack/currents-through.ts'
import { capacityMatched, healthAsStated, moduleInsulated, modulesRecorded, oneOrigin, resistanceMatched } from './pack/salvaged.ts'
import { holdsCharge, neverDeepEmpty, restMatched } from './pack/salvaged-at-rest.ts'
import { lastsStanding, notParkedFull } from './pack/standing.ts'
import { enoughModules, sameCells } from './pack/two-forms.ts'
import { breakingVoltage, voltageWhenEmpty, voltageWhenFull, voltageWhenSagging } from './pack/voltage-window.ts'
import type { Rule } from './rule.ts'
import { steeringFuse, steeringPumpSuffices } from './steering/assist.ts'
import { assistWithoutMessages, steersWithoutAssist } from './steering/effort.ts'
import { cellCurrentOnTrips, followsItsTrips, notThrottled, recoveryWithinCells } from './trips/on-the-trip.ts'
import { rangeGoal } from './trips/range.ts'

/** What has to be known before the first part is bought. */
const BRIEF: readonly Rule[] = [
  datesInOrder,
  layoutInReason,
  gearsInOrder,
  everyoneSits,
  singleCar,
  askedBefore,
  packApproval,
  donorCategory,
  donorAge,
  donorBuilt,
  donorGross,
  donorRegistered,
  donorNotExcluded,
  donorRoadworthy,
  seatsRegistered,
  powerAgainstDonor,
  torqueAgainstDonor,
  powerChange,
  continuousPower,
  historicPrivilege,
  kerbMass,
  kerbMassChange,
  axleShare,
  crashEquivalence,
  frontAxleRise,
  demandsAgreed,
  protectionAgreed,
  permittedMassesKept,
  permittedMassesApproval,
  ladenByLaw,
  bodyUncut,
  dimensionsKept,
  safetyEquipmentKept,
  immobiliserPlanned,
  topSpeedKept,
  partsWithinBudget,
  goalsAgree,
  strongerMotorFits,
]

/** What the donor car brings and what the finished car makes of it. */
const DONOR: readonly Rule[] = [
  weighingsAgree,
  frontShareByLayout,
  usualPartsListed,
  roadLoadMeasured,
  coastDownRepeats,
  coastDownInReason,
  layoutFits,
  axlesCarry,
  ladenMasses,
  seatsWanted,
  trainMass,
  noseLoad,
  trailerMass,
  couplingStrong,
  stopsWithTrailer,
  tipsNoSooner,
  tyreLoad,
  tyreSpeed,
  speedometerDriven,
  speedometerShowsEnough,
  gearboxTorque,
  gearboxSpeed,
  transferCaseTorque,
  axleTorque,
  brakeAssist,
  steeringAssist,
  absKept,
  recoveryOnWheels,
]

/** Whether the drive does what the brief asks, and what it does to its own parts. */
const DRIVE: readonly Rule[] = [
  motorFiguresAgree,
  efficiencyPointsAgree,
  ratioMeetsAll,
  gearedTooShort,
  gearedTooTall,
  topSpeedGoal,
  accelerationGoal,
  peakLasts,
  hillStart,
  steadySpeedGoal,
  climbGoal,
  launchGrip,
  lowRangeOnDry,
  motorOverSpeed,
  propshaftSpeed,
  couplerTorque,
  halfShaftTorque,
  inverterLimits,
  reversedRotation,
  recoveryGrip,
]

/** Whether the pack suits its parts, and whether its cells are kept from harm. */
const PACK: readonly Rule[] = [
  bmsFitted,
  bmsStopsCharger,
  bmsLimitsDrive,
  bmsWatchesTemperature,
  bmsWatchesAll,
  noColdCharging,
  cellLimits,
  chargeStops,
  outsideCabin,
  moduleAlone,
  breakingVoltage,
  fuseGuardsCells,
  shortedCell,
  stringFused,
  emptyBelowFull,
  voltageWhenFull,
  voltageWhenEmpty,
  voltageWhenSagging,
  peakCurrent,
  continuousCurrent,
  fuseAndContactorCarry,
  chargingCurrent,
  peakLastsOut,
  chargeCounted,
  cellsPressed,
  stringsAlike,
  everyModulePlaced,
  modulesRecorded,
  oneOrigin,
  capacityMatched,
  resistanceMatched,
  restMatched,
  holdsCharge,
  neverDeepEmpty,
  moduleInsulated,
  healthAsStated,
  sameCells,
  enoughModules,
  lastsStanding,
  notParkedFull,
]

/** Whether it gets as far as wanted and is full again in time, and what trips and charging do to it. */
const TRIPS_AND_CHARGING: readonly Rule[] = [
  rangeGoal,
  followsItsTrips,
  notThrottled,
  cellCurrentOnTrips,
  recoveryWithinCells,
  chargesAsWanted,
  chargerSetPoint,
  chargerFills,
  chargerReaches,
  dcInlet,
  outletContinuous,
  inletContinuous,
  noExtension,
  driveBlocked,
]

/** Whether everything goes in, is reached, stays clear, and stands on the road as it should. */
const FIT: readonly Rule[] = [
  heavyPartsHaveAShape,
  partsClear,
  insideItsSpace,
  clearOfScans,
  meshesAsLargeAsSaid,
  clearOfGuards,
  clearOfHeat,
  clearOfWheels,
  aboveTheGround,
  clearsRamps,
  boxBehindTheEdge,
  partsOutsideCabin,
  protectedFromWater,
  facesReached,
  askedBeforeCutting,
  boxSealed,
  boxVents,
  boxDrains,
  boxBreathes,
  boxHeld,
  sheetWithinOverhead,
  modulesFitTheirBox,
  standsEven,
  canBeBroughtIn,
  canBeLifted,
  lidsReached,
  powerCutInReach,
  weighsAsReckoned,
  reckonedFromScales,
  nothingBehindHoles,
  staysOnTheLift,
  standsAsBefore,
]

/** Whether it stops, holds and steers as it must under its new mass, with and without what assists it. */
const BRAKES_AND_STEERING: readonly Rule[] = [
  frontLocksFirst,
  brakesUseTheGrip,
  brakeEfficiency,
  brakesEven,
  recoveryOnSnow,
  stopLampOnRecovery,
  wheelSensorsKept,
  brakesStayCool,
  vacuumLasts,
  vacuumSoon,
  pumpComesToRest,
  vacuumOverrunTold,
  brakesWithoutAssist,
  electricBoosterFuse,
  parkingBrakeHolds,
  parkingBrakeOnSlope,
  parkedAxleGrips,
  steersWithoutAssist,
  assistWithoutMessages,
  steeringPumpSuffices,
  steeringFuse,
]

/** The high-voltage circuit: whether it hangs together, what it is rated for, what it stores. */
const HIGH_VOLTAGE: readonly Rule[] = [
  circuitWired,
  bothPolesSwitched,
  boxHasOwnFuse,
  disconnectBreaksString,
  circuitVoltage,
  fuseBreaksShort,
  fuseGuardsWire,
  wireCarries,
  passedThroughCarries,
  prechargeThere,
  prechargeResistorLasts,
  busEmpties,
]

/** Every rule, in the order of the job. A test fails when one is missing here. */
export const RULES: readonly Rule[] = [
  ...BRIEF,
  ...DONOR,
  ...DRIVE,
  ...PACK,
  ...TRIPS_AND_CHARGING,
  ...FIT,
  ...HIGH_VOLTAGE,
  ...BRAKES_AND_STEERING,
]
