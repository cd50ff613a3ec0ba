import type { PartClass } from './part.ts'
import { acCompressor } from './parts/ac-compressor.ts'
import { adapterCoupler } from './parts/adapter-coupler.ts'
import { airHeater } from './parts/air-heater.ts'
import { battery12v } from './parts/battery-12v.ts'
import { battery12vLfp } from './parts/battery-12v-lfp.ts'
import { bms } from './parts/bms.ts'
import { cellLfp } from './parts/cell-lfp.ts'
import { cellLfpPower } from './parts/cell-lfp-power.ts'
import { cellLto } from './parts/cell-lto.ts'
import { cellNmc } from './parts/cell-nmc.ts'
import { chargeInlet } from './parts/charge-inlet.ts'
import { charger } from './parts/charger.ts'
import { chargerCombined } from './parts/charger-combined.ts'
import { contactor } from './parts/contactor.ts'
import { coolantHeater } from './parts/coolant-heater.ts'
import { coolantPump } from './parts/coolant-pump.ts'
import { currentSensor } from './parts/current-sensor.ts'
import { dcDc } from './parts/dc-dc.ts'
import { driveUnitCrate } from './parts/drive-unit-crate.ts'
import { driveUnitHybridRear } from './parts/drive-unit-hybrid-rear.ts'
import { driveUnitHybridTransaxle } from './parts/drive-unit-hybrid-transaxle.ts'
import { driveUnitImFront } from './parts/drive-unit-im-front.ts'
import { driveUnitImRear } from './parts/drive-unit-im-rear.ts'
import { driveUnitPmFront } from './parts/drive-unit-pm-front.ts'
import { driveUnitPmFrontBare } from './parts/drive-unit-pm-front-bare.ts'
import { driveUnitPmRear } from './parts/drive-unit-pm-rear.ts'
import { hvCable } from './parts/hv-cable.ts'
import { hvFuse } from './parts/hv-fuse.ts'
import { insulationMonitor } from './parts/insulation-monitor.ts'
import { inverter400v } from './parts/inverter-400v.ts'
import { inverterLowVoltage } from './parts/inverter-low-voltage.ts'
import { junctionBox } from './parts/junction-box.ts'
import { module355 } from './parts/module-355.ts'
import { module390 } from './parts/module-390.ts'
import { module590 } from './parts/module-590.ts'
import { moduleBlock8s } from './parts/module-block-8s.ts'
import { moduleFlatCan } from './parts/module-flat-can.ts'
import { modulePlugIn12s } from './parts/module-plug-in-12s.ts'
import { modulePlugIn16s } from './parts/module-plug-in-16s.ts'
import { moduleTray6s } from './parts/module-tray-6s.ts'
import { moduleTrayLong } from './parts/module-tray-long.ts'
import { motorDc9in } from './parts/motor-dc-9in.ts'
import { motorDc11in } from './parts/motor-dc-11in.ts'
import { motorImLowVoltage } from './parts/motor-im-low-voltage.ts'
import { motorPm } from './parts/motor-pm.ts'
import { prechargeSet } from './parts/precharge-set.ts'
import { radiator } from './parts/radiator.ts'
import { serviceDisconnect } from './parts/service-disconnect.ts'
import { steeringColumnAssist } from './parts/steering-column-assist.ts'
import { steeringElectroHydraulic } from './parts/steering-electro-hydraulic.ts'
import { vacuumPump } from './parts/vacuum-pump.ts'

/** Every class of parts, in the order a conversion is put together. */
export const partClasses: readonly PartClass[] = [
  driveUnitPmFront,
  driveUnitPmFrontBare,
  driveUnitPmRear,
  driveUnitImRear,
  driveUnitImFront,
  driveUnitHybridRear,
  driveUnitHybridTransaxle,
  driveUnitCrate,
  motorPm,
  motorImLowVoltage,
  motorDc9in,
  motorDc11in,
  inverter400v,
  inverterLowVoltage,
  charger,
  dcDc,
  chargerCombined,
  moduleFlatCan,
  moduleTray6s,
  moduleTrayLong,
  module355,
  module390,
  module590,
  modulePlugIn12s,
  modulePlugIn16s,
  moduleBlock8s,
  cellLfp,
  cellLfpPower,
  cellNmc,
  cellLto,
  contactor,
  prechargeSet,
  hvFuse,
  serviceDisconnect,
  junctionBox,
  insulationMonitor,
  bms,
  currentSensor,
  hvCable,
  coolantPump,
  radiator,
  coolantHeater,
  airHeater,
  acCompressor,
  vacuumPump,
  steeringElectroHydraulic,
  steeringColumnAssist,
  adapterCoupler,
  chargeInlet,
  battery12v,
  battery12vLfp,
]
