import { partsWithinBudget } from './brief/budget.ts'
import { donorAge, donorBuilt } from './brief/donor-dates.ts'
import { donorCategory, donorGross, donorNotExcluded, donorRegistered, donorRoadworthy, seatsRegistered } from './brief/donor-eligible.ts'
import { bodyUncut, dimensionsKept, immobiliserPlanned, safetyEquipmentKept } from './brief/kept.ts'
import { axleShare, crashEquivalence, frontAxleRise, kerbMass, kerbMassChange } from './brief/masses.ts'
import { ladenByLaw, permittedMassesApproval, permittedMassesKept } from './brief/permitted-masses.ts'
import { continuousPower, historicPrivilege, powerAgainstDonor, powerChange, torqueAgainstDonor } from './brief/power-and-torque.ts'
import { askedBefore, packApproval, singleCar } from './brief/route.ts'
import { hillStart } from './drive/hill-start.ts'
import type { Rule } from './rule.ts'

/** What has to be known before the first part is bought. */
const BRIEF: readonly Rule[] = [
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
  permittedMassesKept,
  permittedMassesApproval,
  ladenByLaw,
  bodyUncut,
  dimensionsKept,
  safetyEquipmentKept,
  immobiliserPlanned,
  partsWithinBudget,
]

/** Every rule, in the order of the job. A test fails when one is missing here. */
export const RULES: readonly Rule[] = [...BRIEF, hillStart]
