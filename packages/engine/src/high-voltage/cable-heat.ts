import { root } from '../numerics/index.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { radiationFilm, stillAir } from './air-film.ts'
import { TWENTY } from './conductor-metals.ts'
import {
  amps,
  celsius,
  conductivity,
  film,
  length,
  MM,
  ohmsPerMetre,
  perKelvin,
  practice,
  pressure,
  ratio,
  rise,
  temperature,
  wattsPerMetre,
} from './conductor-symbols.ts'

const JOULE = { work: 'heat', place: 'one insulated cable in still air' } as const
/** Emissivity of a dull jacket, and how its insulation conducts. */
export const JACKET = {
  emissivity: { ...standard('jacket.emissivity', 'emissivity of a dull jacket', 'ε', 0.9, '1', practice('dull jackets')), shows: 'ratio' },
  insulation: standard('jacket.conductivity', 'conductivity of cable insulation', 'k_i', 0.25, 'W/(m·K)', practice('cable insulation')),
} as const

/** Heat a metre of conductor makes. */
export const conductorHeat = formula(
  {
    id: 'conductor-heat',
    label: 'Heat of a metre of conductor',
    gives: wattsPerMetre('q', 'heat by length'),
    takes: {
      current: amps('I', 'current'),
      resistance: ohmsPerMetre('R′_20', 'resistance at 20 °C'),
      coefficient: perKelvin('α_20', 'rise with temperature'),
      conductor: temperature('T_c', 'conductor'),
    },
    uses: [TWENTY],
    text: 'q = I² · R′_20 · (1 + α_20 · (T_c − T_20))',
    source: { work: 'circuits', place: 'heat of a current in a resistance' },
    proof: {
      examples: (
        [
          [25, 171.6, 0.78e-3, 90, 29.3],
          [35, 214.6, 0.554e-3, 90, 32.55],
          [50, 273.7, 0.386e-3, 90, 36.87],
          [70, 345.2, 0.272e-3, 90, 41.32],
          [35, 224.3, 0.554e-3, 125, 39.39],
          [50, 288.4, 0.386e-3, 150, 48.51],
        ] as const
      ).map(([mm2, current, resistance, degrees, gives]) => ({
        takes: { current, resistance, coefficient: 0.00393, conductor: celsius(degrees) },
        gives,
        within: 0.03,
        source: { work: 'circuits', place: `${mm2} mm² at ${degrees} °C; recomputed` } as const,
        because: 'the current is printed to a tenth of an ampere',
      })),
    },
  },
  ({ current, resistance, coefficient, conductor }) => current ** 2 * resistance * (1 + coefficient * (conductor - TWENTY.value)),
)

/** How much hotter the conductor is than its jacket. */
export const insulationDrop = formula(
  {
    id: 'insulation-drop',
    label: 'Rise across the insulation of a cable',
    gives: rise('ΔT_i', 'conductor above jacket'),
    takes: {
      heat: wattsPerMetre('q', 'heat by length'),
      conductor: length('d', 'conductor, diameter'),
      outside: length('D', 'jacket, diameter'),
      insulation: conductivity('k_i', 'conductivity of the insulation'),
    },
    text: 'ΔT_i = q · ln(D / d) / (2 · π · k_i)',
    source: { work: 'heat', place: 'conduction through a tube' },
    leavesOut: 'A screen, which adds a little.',
    proof: {
      examples: (
        [
          [6.9, 11, 29.3, 8.7],
          [8.2, 12.5, 32.55, 8.74],
          [9.9, 14.8, 36.87, 9.44],
          [11.8, 17, 41.32, 9.61],
        ] as const
      ).map(([conductor, outside, heat, gives]) => ({
        takes: { heat, conductor: conductor * MM, outside: outside * MM, insulation: 0.25 },
        gives,
        within: 0.011,
        source: { work: 'heat', place: `cable of ${conductor} and ${outside} mm; recomputed` } as const,
        because: 'difference of two temperatures printed to a hundredth',
      })),
    },
  },
  ({ heat, conductor, outside, insulation }) => (heat * Math.log(outside / conductor)) / (2 * Math.PI * insulation),
)

/** Heat the surface of a cable gives to air and surroundings. */
export const surfaceHeat = formula(
  {
    id: 'cable-surface-heat',
    label: 'Heat a cable gives off',
    gives: wattsPerMetre('q', 'heat by length'),
    takes: {
      air: film('h_c', 'film of still air'),
      radiation: film('h_r', 'radiation as a film'),
      outside: length('D', 'jacket, diameter'),
      surface: temperature('T_s', 'jacket'),
      ambient: temperature('T_a', 'air'),
    },
    text: 'q = (h_c + h_r) · π · D · (T_s − T_a)',
    source: JOULE,
    proof: {
      examples: [
        {
          takes: { air: 7.289, radiation: 0, outside: 0.1, surface: celsius(165), ambient: celsius(23) },
          gives: 325.2,
          within: 0.06,
          source: { work: 'incropera', place: 'Example 9.4, by air alone; recomputed' },
        },
        {
          takes: {
            air: 0,
            radiation: radiationFilm({ emissivity: 0.85, surface: celsius(165), ambient: celsius(23) }),
            outside: 0.1,
            surface: celsius(165),
            ambient: celsius(23),
          },
          gives: 441.6,
          within: 0.06,
          source: { work: 'incropera', place: 'Example 9.4, by radiation alone; recomputed' },
        },
      ],
    },
  },
  ({ air, radiation, outside, surface, ambient }) => (air + radiation) * Math.PI * outside * (surface - ambient),
)

/** One cable alone in still air: what its steady temperature follows from. */
export type CableInAir = {
  readonly resistance: number
  readonly coefficient: number
  readonly conductor: number
  readonly outside: number
  readonly insulation: number
  readonly emissivity: number
  readonly pressure: number
}
/** Heat [W/m] given off at a jacket temperature [K] in air [K], and the conductor temperature [K] that goes with it. Both explicit; below the air heat runs inwards. */
export function heatAtSurface(cable: CableInAir, surface: number, ambient: number): { readonly heat: number; readonly conductor: number } {
  const { outside, pressure, emissivity } = cable,
    air = stillAir({ outside, surface, ambient, pressure }).film,
    heat = surfaceHeat({ air, radiation: radiationFilm({ emissivity, surface, ambient }), outside, surface, ambient })
  return { heat, conductor: surface + insulationDrop({ ...cable, heat }) }
}
const TRIAL = 1e-9
/** Jacket temperature [K] of a cable whose conductor is at a temperature [K]. */
const surfaceOf = (cable: CableInAir, conductor: number, ambient: number): number =>
  root(surface => heatAtSurface(cable, surface, ambient).conductor - conductor, ambient, conductor, TRIAL) ?? ambient

const air = {
  ambient: temperature('T_a', 'air'),
  resistance: ohmsPerMetre('R′_20', 'resistance at 20 °C'),
  coefficient: perKelvin('α_20', 'rise with temperature'),
  conductor: length('d', 'conductor, diameter'),
  outside: length('D', 'jacket, diameter'),
  insulation: conductivity('k_i', 'conductivity of the insulation'),
  emissivity: ratio('ε', 'emissivity of the jacket'),
  pressure: pressure('p', 'air pressure'),
} as const
const WITHIN_TABLES =
  'Conduit, touching cables, screens, sun and air under a bonnet: take the factors of the tables. Checked to 6 % on tabulated ratings.'
const usual = (ohmsPerKilometre: number, d: number, D: number, ambient: number) => ({
  resistance: ohmsPerKilometre / 1000,
  coefficient: 0.00393,
  conductor: d * MM,
  outside: D * MM,
  insulation: 0.25,
  emissivity: 0.9,
  pressure: 101325,
  ambient: celsius(ambient),
})
const recomputed = (place: string) => ({ work: 'churchill-chu-1975', place: `${place}, still air, dull jacket; recomputed` }) as const
const BALANCE = { work: 'churchill-chu-1975', place: 'balance of a long level cylinder with conduction and radiation' } as const

/** Current that holds the conductor of one cable in still air at a temperature; none where the air is as hot. */
export const currentInAir = formula(
  {
    id: 'cable-current-in-air',
    label: 'Current one cable carries in still air',
    gives: { current: amps('I', 'continuous current'), surface: temperature('T_s', 'jacket'), heat: wattsPerMetre('q', 'heat by length') },
    takes: { most: temperature('T_c', 'conductor at most'), ...air },
    text: '(h_c + h_r)·π·D·(T_s − T_a) = 2·π·k_i·(T_c − T_s)/ln(D/d), solved for T_s; I = √(q/(R′_20·(1 + α_20·(T_c − T_20))))',
    words: 'solved by trial, to a thousand-millionth of a kelvin',
    source: BALANCE,
    leavesOut: WITHIN_TABLES,
    proof: {
      examples: (
        [
          [25, 0.78, 6.9, 11.0, 90, 30, 171.6, 81.3, 29.3],
          [35, 0.554, 8.2, 12.5, 90, 30, 214.6, 81.26, 32.55],
          [50, 0.386, 9.9, 14.8, 90, 30, 273.7, 80.56, 36.87],
          [70, 0.272, 11.8, 17.0, 90, 30, 345.2, 80.39, 41.32],
          [35, 0.554, 8.2, 12.5, 125, 60, 224.3, 114.43, 39.39],
          [50, 0.386, 9.9, 14.8, 150, 85, 288.4, 137.58, 48.51],
        ] as const
      ).flatMap(([mm2, r, d, D, most, ambient, current, surface, heat]) => {
        const takes = { most: celsius(most), ...usual(r, d, D, ambient) },
          source = recomputed(`${mm2} mm² at ${most} °C in ${ambient} °C`)
        return [
          { takes, gives: { current }, within: 0.1, source },
          { takes, gives: { surface: celsius(surface) }, within: 0.01, source },
          { takes, gives: { heat }, within: 0.01, source },
        ]
      }),
    },
  },
  ({ most, ambient, ...cable }) => {
    if (!(most > ambient)) return { current: 0, surface: ambient, heat: 0 }
    const surface = surfaceOf(cable, most, ambient),
      { heat } = heatAtSurface(cable, surface, ambient),
      warm = cable.resistance * (1 + cable.coefficient * (most - TWENTY.value))
    return { current: Math.sqrt(heat / warm), surface, heat }
  },
)

/** Above this a trial stops: copper and jacket are long gone. */
const HOTTEST = celsius(1000)

/** Steady temperature of one cable in still air; without end where it would not come to rest below 1000 °C. */
export const temperatureInAir = formula(
  {
    id: 'cable-temperature-in-air',
    label: 'Temperature of one cable in still air',
    gives: { conductor: temperature('T_c', 'conductor'), surface: temperature('T_s', 'jacket') },
    takes: { current: amps('I', 'current'), ...air },
    text: 'I²·R′_20·(1 + α_20·(T_c − T_20)) = (h_c + h_r)·π·D·(T_s − T_a) and T_c = T_s + q·ln(D/d)/(2·π·k_i), solved for T_s',
    words: 'solved by trial, to a thousand-millionth of a kelvin',
    source: BALANCE,
    leavesOut: WITHIN_TABLES,
    proof: {
      examples: (
        [
          [35, 0.554, 8.2, 12.5, 200, 40, { conductor: celsius(92.12) }, 0.01],
          [35, 0.554, 8.2, 12.5, 200, 40, { surface: celsius(84.48) }, 0.01],
          [35, 0.554, 8.2, 12.5, 150, 60, { conductor: celsius(89.62) }, 0.01],
          [50, 0.386, 9.9, 14.8, 250, 40, { conductor: celsius(90.08) }, 0.01],
          [2.5, 7.98, 2.1, 3.0, 20, 40, { conductor: celsius(60.5) }, 0.06],
        ] as const
      ).map(([mm2, r, d, D, current, ambient, gives, within]) => ({
        takes: { current, ...usual(r, d, D, ambient) },
        gives,
        within,
        source: recomputed(`${mm2} mm², ${current} A in ${ambient} °C`),
      })),
    },
  },
  ({ current, ambient, ...cable }) => {
    // By the jacket, for then all else is explicit.
    const excess = (surface: number): number => {
      const { heat, conductor } = heatAtSurface(cable, surface, ambient)
      return heat - conductorHeat({ ...cable, current, conductor })
    }
    const surface = root(excess, ambient, HOTTEST, TRIAL)
    if (surface === undefined) return { conductor: Number.POSITIVE_INFINITY, surface: Number.POSITIVE_INFINITY }
    return { conductor: heatAtSurface(cable, surface, ambient).conductor, surface }
  },
)
