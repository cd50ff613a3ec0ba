import { brakeParts } from './brakes/brake-parts.ts'
import { electricBooster } from './brakes/electric-booster.ts'
import { brakeHeat } from './brakes/heat.ts'
import { lamp } from './brakes/lamp.ts'
import { motorBraking } from './brakes/motor-braking.ts'
import { parking } from './brakes/parking.ts'
import { prints } from './brakes/prints.ts'
import { split } from './brakes/split.ts'
import { stopping } from './brakes/stopping.ts'
import { unassisted } from './brakes/unassisted.ts'
import { utilisation } from './brakes/utilisation.ts'
import { vacuum } from './brakes/vacuum.ts'
import { againstDonor } from './brief/against-donor.ts'
import { cost } from './brief/cost.ts'
import { exchange } from './brief/exchange.ts'
import { outline } from './brief/outline.ts'
import { strongerDrive } from './brief/stronger-drive.ts'
import { chargerLosses } from './charging/charger-losses.ts'
import { chargingGoals } from './charging/charging.ts'
import { fullCharge } from './charging/full-charge.ts'
import { leads, outlets } from './charging/outlets.ts'
import { parked } from './charging/parked.ts'
import { coastDown } from './donor/coast-down.ts'
import { coastDownRuns } from './donor/coast-down-runs.ts'
import { keptParts } from './donor/kept-parts.ts'
import { ledger } from './donor/ledger.ts'
import { loadCases } from './donor/load-cases.ts'
import { moves } from './donor/moves.ts'
import { oldEngine } from './donor/old-engine.ts'
import { roadLoad } from './donor/road-load.ts'
import { rolling } from './donor/rolling.ts'
import { room } from './donor/room.ts'
import { seats } from './donor/seats.ts'
import { stance } from './donor/stance.ts'
import { train } from './donor/train.ts'
import { trainBraking } from './donor/train-braking.ts'
import { turningParts } from './donor/turning-parts.ts'
import { tyres } from './donor/tyres.ts'
import { stripped, weighed } from './donor/weighed.ts'
import { weighings } from './donor/weighings.ts'
import { edges } from './fit/edges.ts'
import { finished } from './fit/finished.ts'
import { reach } from './fit/reach.ts'
import { fixingPoints } from './fit/fixing-points.ts'
import { fixings } from './fit/fixings.ts'
import { gaps } from './fit/gaps.ts'
import { ground } from './fit/ground.ts'
import { lids } from './fit/lids.ts'
import { lift } from './fit/lift.ts'
import { massLedger } from './fit/mass-ledger.ts'
import { meshes } from './fit/meshes.ts'
import { pastScans } from './fit/past-scans.ts'
import { places } from './fit/places.ts'
import { ride } from './fit/ride.ts'
import { rooms } from './fit/rooms.ts'
import { scans } from './fit/scans.ts'
import { boxRoom } from './fit/box-room.ts'
import { shells } from './fit/shells.ts'
import { sides } from './fit/sides.ts'
import { waysIn } from './fit/way-in.ts'
import { wheelHouses } from './fit/wheel-houses.ts'
import { wheelLoads } from './fit/wheel-loads.ts'
import { bus } from './high-voltage/bus.ts'
import { circuit } from './high-voltage/circuit.ts'
import { protection } from './high-voltage/protection.ts'
import { userCurrents } from './high-voltage/user-currents.ts'
import { wires } from './high-voltage/wires.ts'
import { acceleration } from './drive/acceleration.ts'
import { batteryHolds } from './drive/battery-holds.ts'
import { batteryPull } from './drive/battery-pull.ts'
import { climb } from './drive/climb.ts'
import { driveUnits } from './drive/drive-units.ts'
import { envelopes } from './drive/envelopes.ts'
import { gears } from './drive/gears.ts'
import { heldSpeed } from './drive/held-speed.ts'
import { hillStart } from './drive/hill-start.ts'
import { inverterBridges } from './drive/inverter-bridge.ts'
import { motorCurves } from './drive/motor-curves.ts'
import { motorLosses } from './drive/motor-losses.ts'
import { partLoads } from './drive/part-loads.ts'
import { peakTime } from './drive/peak-time.ts'
import { ratioWindow } from './drive/ratio-window.ts'
import { ratios } from './drive/ratios.ts'
import { recovery } from './drive/recovery.ts'
import { topSpeed } from './drive/top-speed.ts'
import { tractive } from './drive/tractive.ts'
import { wantedSpeeds } from './drive/wanted-speed.ts'
import { arrangements } from './pack/arrangements.ts'
import { chargingInTheCold } from './pack/charging-in-the-cold.ts'
import { continuousDraw } from './pack/continuous-draw.ts'
import { currentsThrough } from './pack/currents-through.ts'
import { launchSag } from './pack/launch-sag.ts'
import { moduleSorting } from './pack/module-sorting.ts'
import { moduleVoltage } from './pack/module-voltage.ts'
import { packLife } from './pack/pack-life.ts'
import { moduleStock } from './pack/module-stock.ts'
import { packMass } from './pack/pack-mass.ts'
import { packModel } from './pack/pack-model.ts'
import { packTemperature } from './pack/pack-temperature.ts'
import { powerLimits } from './pack/power-limits.ts'
import { pressing } from './pack/pressing.ts'
import { salvage } from './pack/salvage.ts'
import { standing } from './pack/standing.ts'
import { strings } from './pack/strings.ts'
import { usableEnergy } from './pack/usable-energy.ts'
import { voltageWindow } from './pack/voltage-window.ts'
import { steeringAssistance } from './steering/assist.ts'
import { steeringEffort } from './steering/effort.ts'
import type { Study } from './study.ts'
import { rangeAtSpeeds } from './trips/range-at-speeds.ts'
import { rangeInWeather } from './trips/range-in-weather.ts'
import { ranges } from './trips/ranges.ts'
import { trips } from './trips/trips.ts'

/** The studies behind the headline, answered first. */
export const HEADLINE: readonly Study<unknown>[] = [
  ranges,
  acceleration,
  topSpeed,
  heldSpeed,
  climb,
  hillStart,
  chargingGoals,
  ledger,
  room,
  cost,
]

/** Every study, in the order of the job. A test fails when one is missing here. */
export const STUDIES: readonly Study<unknown>[] = [
  outline,
  againstDonor,
  cost,
  weighed,
  rolling,
  coastDownRuns,
  coastDown,
  roadLoad,
  oldEngine,
  ledger,
  stance,
  weighings,
  stripped,
  tyres,
  loadCases,
  room,
  moves,
  seats,
  train,
  trainBraking,
  keptParts,
  turningParts,
  ratios,
  envelopes,
  motorCurves,
  inverterBridges,
  motorLosses,
  driveUnits,
  hillStart,
  packModel,
  voltageWindow,
  packMass,
  moduleStock,
  usableEnergy,
  powerLimits,
  launchSag,
  chargingInTheCold,
  packTemperature,
  salvage,
  moduleSorting,
  strings,
  arrangements,
  continuousDraw,
  moduleVoltage,
  pressing,
  batteryPull,
  currentsThrough,
  batteryHolds,
  acceleration,
  topSpeed,
  climb,
  heldSpeed,
  gears,
  ratioWindow,
  tractive,
  wantedSpeeds,
  partLoads,
  peakTime,
  recovery,
  trips,
  ranges,
  exchange,
  strongerDrive,
  rangeInWeather,
  rangeAtSpeeds,
  leads,
  chargerLosses,
  outlets,
  fullCharge,
  chargingGoals,
  parked,
  packLife,
  standing,
  rooms,
  places,
  gaps,
  wheelHouses,
  edges,
  ground,
  sides,
  massLedger,
  wheelLoads,
  finished,
  waysIn,
  fixings,
  fixingPoints,
  lids,
  reach,
  lift,
  ride,
  shells,
  boxRoom,
  scans,
  pastScans,
  meshes,
  circuit,
  userCurrents,
  wires,
  protection,
  bus,
  prints,
  brakeParts,
  split,
  motorBraking,
  utilisation,
  stopping,
  lamp,
  brakeHeat,
  vacuum,
  unassisted,
  electricBooster,
  parking,
  steeringEffort,
  steeringAssistance,
]
