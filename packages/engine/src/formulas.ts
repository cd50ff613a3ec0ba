import * as ageing from './battery/ageing.ts'
import * as ageingOfResistance from './battery/ageing-of-resistance.ts'
import * as ageingOfYears from './battery/ageing-of-years.ts'
import * as ageingThroughSeasons from './battery/ageing-through-seasons.ts'
import * as boxHeat from './battery/box-heat.ts'
import * as cellBarrier from './battery/cell-barrier.ts'
import * as cellCircuit from './battery/cell-circuit.ts'
import * as cellHeat from './battery/cell-heat.ts'
import * as chargeAcceptance from './battery/charge-acceptance.ts'
import * as chenRinconMora from './battery/chen-rincon-mora.ts'
import * as coldResistance from './battery/cold-resistance.ts'
import * as compression from './battery/compression.ts'
import * as highestShort from './battery/highest-short.ts'
import * as joints from './battery/joints.ts'
import * as lampTest from './battery/lamp-test.ts'
import * as moduleLot from './battery/module-lot.ts'
import * as openCircuitSets from './battery/open-circuit-sets.ts'
import * as packArithmetic from './battery/pack-arithmetic.ts'
import * as packPower from './battery/pack-power.ts'
import * as packResistance from './battery/pack-resistance.ts'
import * as packSums from './battery/pack-sums.ts'
import * as parallelBranches from './battery/parallel-branches.ts'
import * as powerLimit from './battery/power-limit.ts'
import * as salvageLimits from './battery/salvage-limits.ts'
import * as selfDischarge from './battery/self-discharge.ts'
import * as standingTime from './battery/standing-time.ts'
import * as twoForms from './battery/two-forms.ts'
import * as usableEnergy from './battery/usable-energy.ts'
import * as ventGas from './battery/vent-gas.ts'
import * as weakestOfMany from './battery/weakest-of-many.ts'
import * as adhesionUtilisation from './brakes/adhesion-utilisation.ts'
import * as booster from './brakes/booster.ts'
import * as brakeSplit from './brakes/brake-split.ts'
import * as corridor from './brakes/corridor.ts'
import * as descent from './brakes/descent.ts'
import * as disc from './brakes/disc.ts'
import * as drum from './brakes/drum.ts'
import * as firstLock from './brakes/first-lock.ts'
import * as forcePerPressure from './brakes/force-per-pressure.ts'
import * as idealForces from './brakes/ideal-forces.ts'
import * as loadSensingValve from './brakes/load-sensing-valve.ts'
import * as lockThroughValve from './brakes/lock-through-valve.ts'
import * as motorsBraking from './brakes/motors-braking.ts'
import * as overRange from './brakes/over-range.ts'
import * as parkingBrake from './brakes/parking-brake.ts'
import * as parkingGrip from './brakes/parking-grip.ts'
import * as parkingSlope from './brakes/parking-slope.ts'
import * as pinnedShoe from './brakes/pinned-shoe.ts'
import * as poweredBooster from './brakes/powered-booster.ts'
import * as proportioningValve from './brakes/proportioning-valve.ts'
import * as pumpDown from './brakes/pump-down.ts'
import * as regenerationForce from './brakes/regeneration-force.ts'
import * as regenerationLimits from './brakes/regeneration-limits.ts'
import * as repeatedStops from './brakes/repeated-stops.ts'
import * as rollerPrint from './brakes/roller-print.ts'
import * as rotorHeating from './brakes/rotor-heating.ts'
import * as steadyStop from './brakes/steady-stop.ts'
import * as stopByBraking from './brakes/stop-by-braking.ts'
import * as stopLamp from './brakes/stop-lamp.ts'
import * as stoppingDistance from './brakes/stopping-distance.ts'
import * as unassistedBraking from './brakes/unassisted-braking.ts'
import * as vacuumLeft from './brakes/vacuum-left.ts'
import * as vacuumReserve from './brakes/vacuum-reserve.ts'
import * as wheelSlip from './brakes/wheel-slip.ts'
import * as charge from './charging/charge.ts'
import * as chargerLoss from './charging/charger-loss.ts'
import * as closedForms from './charging/closed-forms.ts'
import * as outlet from './charging/outlet.ts'
import * as powerToPack from './charging/power-to-pack.ts'
import * as chargingRoom from './charging/room.ts'
import * as exchange from './cost/exchange.ts'
import * as parts from './cost/parts.ts'
import * as strongerDrive from './cost/stronger-drive.ts'
import * as acceleration from './drive/acceleration.ts'
import * as batteryPull from './drive/battery-pull.ts'
import * as envelope from './drive/envelope.ts'
import * as gearLoss from './drive/gear-loss.ts'
import * as highestSpeed from './drive/highest-speed.ts'
import * as inverterBridge from './drive/inverter-bridge.ts'
import * as lossLaw from './drive/loss-law.ts'
import * as lossMap from './drive/loss-map.ts'
import * as motorLoss from './drive/motor-loss.ts'
import * as partLoads from './drive/part-loads.ts'
import * as ratioWindow from './drive/ratio-window.ts'
import * as driveRecovery from './drive/recovery.ts'
import * as speeds from './drive/speeds.ts'
import * as steepestStart from './drive/steepest-start.ts'
import * as wheelForce from './drive/wheel-force.ts'
import * as winding from './drive/winding.ts'
import * as ackermann from './fitting/ackermann.ts'
import * as alignedGap from './fitting/aligned-gap.ts'
import * as keptRoom from './fitting/kept-room.ts'
import * as modulesInBox from './fitting/packing/modules-in-box.ts'
import * as twoFormsInBox from './fitting/packing/two-forms-in-box.ts'
import * as packingByHand from './fitting/packing/by-hand.ts'
import * as placedBody from './fitting/placed-body.ts'
import * as pointToBox from './fitting/point-to-box.ts'
import * as slantedWalls from './fitting/slanted-walls.ts'
import * as segments from './fitting/segments.ts'
import * as shaftOverTravel from './fitting/shaft-over-travel.ts'
import * as shell from './fitting/shell.ts'
import * as surveyed from './fitting/surveyed.ts'
import * as fixingPoints from './fitting/fixing-points.ts'
import * as handReach from './fitting/hand-reach.ts'
import * as tubeToBox from './fitting/tube-to-box.ts'
import * as turnedBoxes from './fitting/turned-boxes.ts'
import * as turningWheel from './fitting/turning-wheel.ts'
import * as wayIn from './fitting/way-in.ts'
import * as wheelToBody from './fitting/wheel-to-body.ts'
import * as airFilm from './high-voltage/air-film.ts'
import * as backEmf from './high-voltage/back-emf.ts'
import * as bendRadius from './high-voltage/bend-radius.ts'
import * as bonding from './high-voltage/bonding.ts'
import * as busDischarge from './high-voltage/bus-discharge.ts'
import * as busSums from './high-voltage/bus-sums.ts'
import * as busTransient from './high-voltage/bus-transient.ts'
import * as cableAmpacity from './high-voltage/cable-ampacity.ts'
import * as cableHeat from './high-voltage/cable-heat.ts'
import * as cableWarming from './high-voltage/cable-warming.ts'
import * as conductorResistance from './high-voltage/conductor-resistance.ts'
import * as conductorSizes from './high-voltage/conductor-sizes.ts'
import * as contactorSteps from './high-voltage/contactor-steps.ts'
import * as controlPilot from './high-voltage/control-pilot.ts'
import * as creepage from './high-voltage/creepage.ts'
import * as fuseCurve from './high-voltage/fuse-curve.ts'
import * as fuseRating from './high-voltage/fuse-rating.ts'
import * as insulationFaultPlace from './high-voltage/insulation-fault-place.ts'
import * as insulationLimit from './high-voltage/insulation-limit.ts'
import * as insulationTester from './high-voltage/insulation-tester.ts'
import * as loopInductance from './high-voltage/loop-inductance.ts'
import * as precharge from './high-voltage/precharge.ts'
import * as prospectiveCurrent from './high-voltage/prospective-current.ts'
import * as shortCircuitWithstand from './high-voltage/short-circuit-withstand.ts'
import * as touchEnergy from './high-voltage/touch-energy.ts'
import * as twoVoltageMethod from './high-voltage/two-voltage-method.ts'
import * as voltageClass from './high-voltage/voltage-class.ts'
import * as wireCurrent from './high-voltage/wire-current.ts'
import * as columnAssist from './steering/column-assist.ts'
import * as steeringEffort from './steering/effort.ts'
import * as heavierFront from './steering/heavier-front.ts'
import * as hydraulicAssist from './steering/hydraulic-assist.ts'
import * as jackingMoment from './steering/jacking-moment.ts'
import * as parkingMoment from './steering/parking-moment.ts'
import * as rackForce from './steering/rack-force.ts'
import * as scrubMoment from './steering/scrub-moment.ts'
import * as tripConsumption from './trip/consumption.ts'
import * as inverterHeat from './trip/inverter-heat.ts'
import * as tripJourney from './trip/journey.ts'
import * as trip from './trip/trip.ts'
import * as againstDonor from './vehicle/against-donor.ts'
import * as airDensity from './vehicle/air-density.ts'
import * as centreOfMass from './vehicle/centre-of-mass.ts'
import * as coastDown from './vehicle/coast-down.ts'
import * as cornerMasses from './vehicle/corner-masses.ts'
import * as cornering from './vehicle/cornering.ts'
import * as defaultRoadLoad from './vehicle/default-road-load.ts'
import * as dragArea from './vehicle/drag-area.ts'
import * as grip from './vehicle/grip.ts'
import * as groundClearance from './vehicle/ground-clearance.ts'
import * as hill from './vehicle/hill.ts'
import * as keptParts from './vehicle/kept-parts.ts'
import * as laden from './vehicle/laden.ts'
import * as lifting from './vehicle/lifting.ts'
import * as massAndAxles from './vehicle/mass-and-axles.ts'
import * as massOnWheels from './vehicle/mass-on-wheels.ts'
import * as movingMass from './vehicle/moving-mass.ts'
import * as offRoadClass from './vehicle/off-road-class.ts'
import * as overhang from './vehicle/overhang.ts'
import * as ride from './vehicle/ride.ts'
import * as roadLoad from './vehicle/road-load.ts'
import * as rollOver from './vehicle/roll-over.ts'
import * as rollingRadius from './vehicle/rolling-radius.ts'
import * as rotatingInertia from './vehicle/rotating-inertia.ts'
import * as runningOrder from './vehicle/running-order.ts'
import * as sinceWeighed from './vehicle/since-weighed.ts'
import * as speedometer from './vehicle/speedometer.ts'
import * as standsLower from './vehicle/stands-lower.ts'
import * as steadySpeed from './vehicle/steady-speed.ts'
import * as towing from './vehicle/towing.ts'
import * as traction from './vehicle/traction.ts'
import * as tyreLoad from './vehicle/tyre-load.ts'
import * as weight from './vehicle/weight.ts'
import type { AnyFormula } from './working/formula.ts'

/** Every file of formulas, by the chapter of the handbook it belongs to. A test fails when a file with a card is missing here. */
export const CHAPTERS: Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>> = {
  vehicle: [
    airDensity,
    againstDonor,
    runningOrder,
    roadLoad,
    grip,
    hill,
    laden,
    massAndAxles,
    rollingRadius,
    centreOfMass,
    rollOver,
    rotatingInertia,
    sinceWeighed,
    speedometer,
    steadySpeed,
    towing,
    traction,
    tyreLoad,
    coastDown,
    defaultRoadLoad,
    dragArea,
    keptParts,
    movingMass,
    ride,
    cornering,
    cornerMasses,
    massOnWheels,
    groundClearance,
    overhang,
    standsLower,
    offRoadClass,
    lifting,
    weight,
  ],
  fitting: [
    placedBody,
    fixingPoints,
    handReach,
    tubeToBox,
    wheelToBody,
    keptRoom,
    wayIn,
    slantedWalls,
    shell,
    alignedGap,
    turnedBoxes,
    pointToBox,
    segments,
    shaftOverTravel,
    turningWheel,
    surveyed,
    ackermann,
    modulesInBox,
    twoFormsInBox,
    packingByHand,
  ],
  cost: [parts, exchange, strongerDrive],
  battery: [
    openCircuitSets,
    chenRinconMora,
    cellCircuit,
    powerLimit,
    coldResistance,
    packArithmetic,
    packResistance,
    packSums,
    twoForms,
    packPower,
    moduleLot,
    lampTest,
    chargeAcceptance,
    usableEnergy,
    cellHeat,
    boxHeat,
    ageing,
    ageingOfResistance,
    ageingOfYears,
    ageingThroughSeasons,
    selfDischarge,
    standingTime,
    weakestOfMany,
    parallelBranches,
    salvageLimits,
    compression,
    joints,
    ventGas,
    cellBarrier,
    highestShort,
  ],
  drive: [
    wheelForce,
    envelope,
    gearLoss,
    inverterBridge,
    motorLoss,
    lossLaw,
    lossMap,
    winding,
    speeds,
    highestSpeed,
    acceleration,
    batteryPull,
    ratioWindow,
    steepestStart,
    partLoads,
    driveRecovery,
  ],
  charging: [outlet, powerToPack, chargerLoss, charge, closedForms, chargingRoom],
  'high-voltage': [
    voltageClass,
    insulationLimit,
    twoVoltageMethod,
    insulationFaultPlace,
    insulationTester,
    touchEnergy,
    busDischarge,
    bonding,
    precharge,
    busTransient,
    contactorSteps,
    backEmf,
    creepage,
    controlPilot,
    conductorSizes,
    conductorResistance,
    cableAmpacity,
    airFilm,
    cableHeat,
    cableWarming,
    shortCircuitWithstand,
    loopInductance,
    bendRadius,
    fuseRating,
    prospectiveCurrent,
    fuseCurve,
    busSums,
    wireCurrent,
  ],
  trip: [trip, tripJourney, tripConsumption, inverterHeat],
  brakes: [
    idealForces,
    adhesionUtilisation,
    firstLock,
    corridor,
    regenerationLimits,
    regenerationForce,
    wheelSlip,
    stopLamp,
    stoppingDistance,
    steadyStop,
    unassistedBraking,
    booster,
    poweredBooster,
    vacuumReserve,
    pumpDown,
    disc,
    drum,
    pinnedShoe,
    brakeSplit,
    forcePerPressure,
    overRange,
    stopByBraking,
    motorsBraking,
    vacuumLeft,
    parkingSlope,
    proportioningValve,
    lockThroughValve,
    loadSensingValve,
    rotorHeating,
    repeatedStops,
    descent,
    parkingBrake,
    parkingGrip,
    rollerPrint,
  ],
  steering: [parkingMoment, scrubMoment, jackingMoment, rackForce, hydraulicAssist, columnAssist, heavierFront, steeringEffort],
}
const isFormula = (x: unknown): x is AnyFormula => typeof x === 'function' && 'card' in x

/** All formulas with their chapter, in the order of their files. */
export const FORMULAS: readonly { readonly chapter: string; readonly formula: AnyFormula }[] = Object.entries(CHAPTERS).flatMap(
  ([chapter, files]) =>
    files.flatMap(file =>
      Object.entries(file)
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([, value]) => value)
        .filter(isFormula)
        .map(formula => ({ chapter, formula })),
    ),
)
export const formulaById = (id: string): AnyFormula | undefined => FORMULAS.find(f => f.formula.card.id === id)?.formula
