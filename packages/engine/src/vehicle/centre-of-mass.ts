import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'moments' } as const
const HAND = { work: 'statics', place: 'ledger of nine parts, worked by hand' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const masses = (symbol: string, label: string) => ({ symbol, unit: 'kg', label, many: true }) as const
const height = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const heights = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const

/** Height of the centre of mass after the changes. */
export const centreHeightByLedger = formula(
  {
    id: 'centre-height-by-ledger',
    label: 'Height of the centre of mass, by ledger',
    gives: height('h', 'height of the centre of mass'),
    takes: {
      before: mass('m_0', 'donor as weighed'),
      height: height('z_0', 'height of the centre of mass before'),
      added: masses('m_a', 'added'),
      addedZ: heights('z_a', 'added, above the ground'),
      removed: masses('m_o', 'taken out'),
      removedZ: heights('z_o', 'taken out, above the ground'),
      total: mass('m', 'mass after'),
    },
    text: 'h = (m_0 · z_0 + Σ m_a · z_a − Σ m_o · z_o) / m',
    source: STATICS,
    leavesOut: 'The car standing higher or lower on its springs after the change.',
    proof: {
      examples: [
        {
          takes: {
            before: 1100,
            height: 0.54,
            added: [55, 12, 110, 170, 14],
            addedZ: [0.45, 0.7, 0.6, 0.45, 0.6],
            removed: [125, 22, 48, 14],
            removedZ: [0.55, 0.25, 0.4, 0.5],
            total: 1252,
          },
          gives: 0.5412,
          within: 0.00005,
          source: HAND,
        },
      ],
    },
  },
  ({ before, height, added, addedZ, removed, removedZ, total }) => {
    let into = 0,
      out = 0
    for (let i = 0; i < added.length; i++) into += (added[i] as number) * (addedZ[i] as number)
    for (let i = 0; i < removed.length; i++) out += (removed[i] as number) * (removedZ[i] as number)
    return (before * height + into - out) / total
  },
)

const lift = {
  total: mass('m', 'mass on the scales'),
  wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase', shows: 'length', holds: [1.5, 4.5] },
  raised: { symbol: 'H', unit: 'm', label: 'rise of the rear wheel centres', shows: 'length', holds: [0.2, 1.2] },
} as const

/** Height of the centre of mass from weighing the front axle with the rear axle raised and the suspension blocked. */
export const centreHeightByLift = formula(
  {
    id: 'centre-height-by-lift',
    label: 'Height of the centre of mass, axle raised',
    gives: height('h', 'height of the centre of mass'),
    takes: {
      ...lift,
      level: mass('m_F', 'front axle, car level'),
      lifted: mass('m_F′', 'front axle, rear raised'),
      radius: height('r_L', 'loaded radius'),
    },
    text: 'θ = asin(H / L)\nh = r_L + (m_F′ − m_F) · L / (m · tan(θ))',
    source: { work: 'iso-10392', place: 'axle-lift method', mark: 'from memory' },
    leavesOut:
      'Springs that move and fluids that run: block the suspension, brim or drain the tank. Wheels of one loaded radius front and rear.',
    proof: {
      examples: [
        {
          takes: { total: 1175, wheelbase: 2.45, raised: 0.7, level: 597, lifted: 648, radius: 0.29 },
          gives: 0.647,
          within: 0.0005,
          source: { work: 'statics', place: 'lift test worked by hand: 1175 kg, rear raised 0.70 m, front from 597 to 648 kg' },
        },
      ],
    },
  },
  ({ total, wheelbase, raised, level, lifted, radius }) =>
    radius + ((lifted - level) * wheelbase) / (total * Math.tan(Math.asin(raised / wheelbase))),
)

/** How far the height read from a lift test moves with one kilogram on the scale: lift as high as is safe. */
export const liftTestSensitivity = formula(
  {
    id: 'lift-test-sensitivity',
    label: 'Height read per scale error',
    gives: { symbol: 's', unit: 'm/kg' },
    takes: lift,
    text: 's = L / (m · tan(asin(H / L)))',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { total: 1175, wheelbase: 2.45, raised: 0.7 },
          gives: 0.007,
          within: 0.00005,
          source: { work: 'statics', place: 'the same lift test: 7.0 mm for each kilogram' },
        },
      ],
    },
  },
  ({ total, wheelbase, raised }) => wheelbase / (total * Math.tan(Math.asin(raised / wheelbase))),
)

/** Height of the centre of mass with a load on the roof. */
export const centreHeightWithRoofLoad = formula(
  {
    id: 'centre-height-with-roof-load',
    label: 'Height of the centre of mass, roof load on',
    gives: height('h′', 'height of the centre of mass'),
    takes: {
      mass: mass('m', 'car'),
      height: height('h', 'height of its centre of mass'),
      load: mass('m_r', 'roof load'),
      loadZ: height('z_r', 'roof load, above the ground'),
    },
    text: 'h′ = (m · h + m_r · z_r) / (m + m_r)',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { mass: 1252, height: 0.5412, load: 75, loadZ: 1.55 },
          gives: 0.598,
          within: 0.0005,
          source: { work: 'statics', place: '75 kg on the roof at 1.55 m, worked by hand' },
        },
      ],
    },
  },
  ({ mass, height, load, loadZ }) => (mass * height + load * loadZ) / (mass + load),
)
