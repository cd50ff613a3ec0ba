import { type Donor, type DrivenWheels, type Gap, isGap } from '@ampwright/engine'

/** How torque gets to the wheels in a concept. */
export type Way = 'drive unit' | 'kept gearbox, one gear' | 'kept gearbox, shifting' | 'single reduction' | 'two drive units'
export type Axle = 'front' | 'rear' | 'both'
export type ConceptKind = {
  readonly id: string
  readonly title: string
  readonly way: Way
  readonly axle: Axle
  /** Goes through the transfer case of the donor car. */
  readonly transfer: boolean
  /** Parts of the old driveline that stay in the car. */
  readonly keeps: readonly Kept[]
}
export type Kept = 'gearbox' | 'propshaft' | 'transfer case' | 'axle drive'

const kind = (id: string, title: string, way: Way, axle: Axle, keeps: readonly Kept[], transfer = false): ConceptKind => ({
  id,
  title,
  way,
  axle,
  keeps,
  transfer,
})
const UNIT = 'drive unit in place of engine and gearbox'
const ONE_GEAR = 'motor on the kept gearbox, held in one gear'
const SHIFTING = 'motor on the kept gearbox, shifted with the clutch'

/** What a car whose engine drives the axle beside it through half-shafts can become. */
const beside = (axle: 'front' | 'rear'): readonly ConceptKind[] => [
  kind('drive-unit', UNIT, 'drive unit', axle, []),
  kind('gearbox-one-gear', ONE_GEAR, 'kept gearbox, one gear', axle, ['gearbox', 'axle drive']),
  kind('gearbox-shifting', SHIFTING, 'kept gearbox, shifting', axle, ['gearbox', 'axle drive']),
]
const behind: readonly Kept[] = ['propshaft', 'axle drive']
const toRear: readonly ConceptKind[] = [
  kind('gearbox-one-gear', ONE_GEAR, 'kept gearbox, one gear', 'rear', ['gearbox', ...behind]),
  kind('gearbox-shifting', SHIFTING, 'kept gearbox, shifting', 'rear', ['gearbox', ...behind]),
  kind('reduction', 'single reduction onto the propshaft', 'single reduction', 'rear', behind),
]
const throughCase: readonly Kept[] = ['transfer case', 'propshaft', 'axle drive']
const throughTransfer: readonly ConceptKind[] = [
  kind('reduction', 'single reduction into the transfer case', 'single reduction', 'both', throughCase, true),
  kind('gearbox-one-gear', `${ONE_GEAR}, transfer case kept`, 'kept gearbox, one gear', 'both', ['gearbox', ...throughCase], true),
  kind('gearbox-shifting', `${SHIFTING}, transfer case kept`, 'kept gearbox, shifting', 'both', ['gearbox', ...throughCase], true),
]
const twoUnits = kind('two-units', 'a drive unit at each axle, no shaft between them', 'two drive units', 'both', [])

type Position = 'transverse front' | 'longitudinal front' | 'rear' | 'mid'
/** Concepts by engine position and driven wheels; a pair that is not here is no layout cars are built in. */
const TABLE: Readonly<Record<Position, Partial<Record<DrivenWheels, readonly ConceptKind[]>>>> = {
  'transverse front': {
    front: beside('front'),
    all: [twoUnits, kind('drive-unit', `${UNIT}, front axle alone driven`, 'drive unit', 'front', [])],
  },
  'longitudinal front': {
    front: beside('front'),
    rear: toRear,
    'part-time 4x4': throughTransfer,
    all: [...throughTransfer, twoUnits],
  },
  rear: { rear: beside('rear'), all: [twoUnits, kind('drive-unit', `${UNIT}, rear axle alone driven`, 'drive unit', 'rear', [])] },
  mid: { rear: beside('rear'), all: [twoUnits, kind('drive-unit', `${UNIT}, rear axle alone driven`, 'drive unit', 'rear', [])] },
}

/** Driven wheels cars are built with, for each engine position. */
export const layouts: Readonly<Record<Position, readonly DrivenWheels[]>> = Object.fromEntries(
  Object.entries(TABLE).map(([position, row]) => [position, Object.keys(row)]),
) as never

/** Concepts that can be built into a donor car; the gap to close while its layout is not known, nothing where it is no layout cars have. */
export function conceptKinds({ enginePosition, drivenWheels }: Donor): readonly ConceptKind[] | Gap {
  if (isGap(enginePosition)) return enginePosition
  if (isGap(drivenWheels)) return drivenWheels
  return TABLE[enginePosition.value as Position][drivenWheels.value] ?? []
}
