import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'

const EU_1230 = { work: 'eu-1230-2012', place: 'Art. 2, mass in running order' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const volume = (symbol: string, label: string) => ({ symbol, unit: 'm³', label }) as const

const DRIVER = standard('mass-of-driver', 'driver in the mass in running order', 'm_d', 75, 'kg', EU_1230)
const FUEL_SHARE = standard('fuel-in-running-order', 'share of a full tank in the mass in running order', 's_f', 0.9, '1', EU_1230)

/** Density at 15 °C: middle and half-width of the range the fuel standard allows. */
export const FUEL_DENSITY: Readonly<Record<'petrol' | 'diesel', Fact>> = {
  petrol: {
    ...standard('density-of-petrol', 'density of petrol', 'ρ', 747.5, 'kg/m³', { work: 'en-228', place: '720 to 775 kg/m³ at 15 °C' }),
    half: 27.5,
  },
  diesel: {
    ...standard('density-of-diesel', 'density of diesel', 'ρ', 832.5, 'kg/m³', { work: 'en-590', place: '820 to 845 kg/m³ at 15 °C' }),
    half: 12.5,
  },
}

/** What a volume of fuel weighs. */
export const fuelMass = formula(
  {
    id: 'fuel-mass',
    label: 'Mass of fuel',
    gives: mass('m_f', 'fuel'),
    takes: { volume: volume('V_f', 'fuel'), density: { symbol: 'ρ', unit: 'kg/m³', label: 'density of the fuel' } },
    text: 'm_f = ρ · V_f',
    source: { work: 'definition', place: 'density' },
    proof: { none: 'definition' },
  },
  ({ volume, density }) => density * volume,
)

/** Mass in running order of a car that was weighed without driver: the fuel in it comes out, nine tenths of a full tank and the driver go in. */
export const massInRunningOrder = formula(
  {
    id: 'mass-in-running-order',
    label: 'Mass in running order',
    gives: mass('m_ro', 'mass in running order'),
    takes: {
      weighed: mass('m_w', 'as weighed, no driver'),
      fuel: volume('V_f', 'fuel in the tank when weighed'),
      tank: volume('V_t', 'tank size'),
      density: { symbol: 'ρ', unit: 'kg/m³', label: 'density of the fuel' },
    },
    uses: [DRIVER, FUEL_SHARE],
    text: 'm_ro = m_w − ρ · V_f + s_f · ρ · V_t + m_d',
    source: EU_1230,
    proof: {
      examples: [
        {
          takes: { weighed: 959, fuel: 0.02, tank: 0.044, density: 750 },
          gives: 1048.7,
          within: 1e-9,
          source: { work: 'eu-1230-2012', place: 'the definition worked by hand: 959 − 15 + 29.7 + 75', mark: 'from memory' },
        },
      ],
    },
  },
  ({ weighed, fuel, tank, density }) => weighed - density * fuel + FUEL_SHARE.value * density * tank + DRIVER.value,
)
/** The same for a car without a tank. */
export const massInRunningOrderElectric = formula(
  {
    id: 'mass-in-running-order-electric',
    label: 'Mass in running order, battery car',
    gives: mass('m_ro', 'mass in running order'),
    takes: { kerb: mass('m_k', 'kerb mass, no driver') },
    uses: [DRIVER],
    text: 'm_ro = m_k + m_d',
    source: EU_1230,
    proof: { none: 'definition' },
  },
  ({ kerb }) => kerb + DRIVER.value,
)
