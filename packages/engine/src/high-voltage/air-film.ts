import { STANDARD_PRESSURE } from '../physics/air.ts'
import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { celsius, film, length, number, pressure, ratio, temperature } from './conductor-symbols.ts'

const ATMOSPHERE = { work: 'us-standard-atmosphere-1976', place: 'fits of viscosity and conductivity of air' } as const
const DRY_AIR = { work: 'incropera', place: 'properties of air', mark: 'from memory' } as const

const VISCOSITY = standard('air.viscosity', 'viscosity of air, factor', 'c_μ', 1.458e-6, 'kg/(m·s·K^0.5)', ATMOSPHERE)
const SUTHERLAND = standard('air.sutherland', 'viscosity of air, temperature', 'S_μ', 110.4, 'K', ATMOSPHERE)
const CONDUCTS = standard('air.conductivity', 'conductivity of air, factor', 'c_k', 2.64638e-3, 'W/(m·K^1.5)', ATMOSPHERE)
const CONDUCTS_FROM = standard('air.conductivity-temperature', 'conductivity of air, temperature', 'S_k', 245.4, 'K', ATMOSPHERE)
const CONDUCTS_BEND = standard('air.conductivity-exponent', 'conductivity of air, exponent', 'B_k', 12, 'K', ATMOSPHERE)
const GAS = standard('air.gas', 'gas constant of dry air', 'R_a', 287.05, 'J/(kg·K)', ATMOSPHERE)
const HEAT = standard('air.heat', 'heat of air at constant pressure', 'c_p', 1006, 'J/(kg·K)', DRY_AIR)

/** Air pressure at sea level on a standard day: the usual case, thinner air cools a little less. */
export const SEA_LEVEL = standard('air.sea-level', 'air at sea level', 'p', STANDARD_PRESSURE, 'Pa', {
  work: 'us-standard-atmosphere-1976',
  place: 'pressure at sea level',
})

const VALIDATION = { outside: 0.1, surface: celsius(165), ambient: celsius(23), pressure: STANDARD_PRESSURE }
const flexible = (outside: number, surface: number, ambient: number) => ({
  outside,
  surface: celsius(surface),
  ambient: celsius(ambient),
  pressure: STANDARD_PRESSURE,
})
const recomputed = (place: string) => ({ work: 'churchill-chu-1975', place: `${place}; recomputed` }) as const

/** How well still air takes heat from a long level cylinder: by the law of Churchill and Chu with the air's properties halfway between. */
export const stillAir = formula(
  {
    id: 'still-air-film',
    label: 'Film of still air on a level cable',
    gives: { rayleigh: number('Ra', 'Rayleigh number'), nusselt: number('Nu', 'Nusselt number'), film: film('h_c', 'film of still air') },
    takes: {
      outside: length('D', 'outside diameter'),
      surface: temperature('T_s', 'surface'),
      ambient: temperature('T_a', 'air'),
      pressure: pressure('p', 'air pressure'),
    },
    uses: [VISCOSITY, SUTHERLAND, CONDUCTS, CONDUCTS_FROM, CONDUCTS_BEND, GAS, HEAT, GRAVITY],
    text: [
      'T_f = (T_s + T_a) / 2',
      'μ = c_μ · T_f^1.5 / (T_f + S_μ)',
      'k = c_k · T_f^1.5 / (T_f + S_k · exp(−ln(10) · B_k / T_f))',
      'ν = μ · R_a · T_f / p',
      'Pr = μ · c_p / k',
      'Ra = g · |T_s − T_a| · D^3 · Pr / (T_f · ν²)',
      'Nu = (0.6 + 0.387 · Ra^(1/6) / (1 + (0.559 / Pr)^(9/16))^(8/27))²',
      'h_c = Nu · k / D',
    ].join('\n'),
    source: { work: 'churchill-chu-1975', place: 'long level cylinder, Rayleigh numbers of 1e-5 to 1e12' },
    leavesOut: 'Draught, which cools more; neighbours, conduit and upright runs, which cool less.',
    proof: {
      examples: [
        { takes: VALIDATION, gives: { nusselt: 23.3 }, within: 0.05, source: { work: 'incropera', place: 'Example 9.4' } },
        { takes: VALIDATION, gives: { film: 7.29 }, within: 0.005, source: { work: 'incropera', place: 'Example 9.4' } },
        { takes: VALIDATION, gives: { nusselt: 23.29 }, within: 0.005, source: recomputed('cylinder of 0.1 m, 165 °C in 23 °C') },
        ...(
          [
            [0.011, 81.3, 30, 4192, 3.567, 9.228],
            [0.0125, 81.26, 30, 6149, 3.895, 8.867],
            [0.0148, 80.56, 30, 10116, 4.378, 8.41],
            [0.017, 80.39, 30, 15298, 4.835, 8.085],
            [0.0125, 114.43, 60, 4278, 3.579, 8.821],
            [0.0148, 137.58, 85, 5101, 3.723, 8.188],
          ] as const
        ).flatMap(([outside, surface, ambient, rayleigh, nusselt, film]) => {
          const takes = flexible(outside, surface, ambient),
            source = recomputed(`cable of ${outside * 1000} mm, ${surface} °C in ${ambient} °C`)
          return [
            { takes, gives: { rayleigh }, within: 2, source, because: 'the surface is printed to a hundredth of a kelvin' },
            { takes, gives: { nusselt }, within: 0.001, source },
            { takes, gives: { film }, within: 0.001, source },
          ]
        }),
      ],
    },
  },
  ({ outside, surface, ambient, pressure }) => {
    const mean = (surface + ambient) / 2,
      viscosity = (VISCOSITY.value * mean ** 1.5) / (mean + SUTHERLAND.value),
      conductivity = (CONDUCTS.value * mean ** 1.5) / (mean + CONDUCTS_FROM.value * 10 ** (-CONDUCTS_BEND.value / mean)),
      kinematic = (viscosity * GAS.value * mean) / pressure,
      prandtl = (viscosity * HEAT.value) / conductivity,
      rayleigh = (GRAVITY.value * Math.abs(surface - ambient) * outside ** 3 * prandtl) / (mean * kinematic ** 2),
      nusselt = (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2
    return { rayleigh, nusselt, film: (nusselt * conductivity) / outside }
  },
)

const RADIATION = standard('stefan-boltzmann', 'Stefan–Boltzmann constant', 'σ', 5.670374419e-8, 'W/(m²·K⁴)', {
  work: 'definition',
  place: 'Stefan–Boltzmann constant, fixed by the SI of 2019',
})

/** Heat radiated to surroundings of the air's temperature, as a film. */
export const radiationFilm = formula(
  {
    id: 'radiation-film',
    label: 'Radiation from a cable, as a film',
    gives: film('h_r', 'radiation as a film'),
    takes: {
      emissivity: ratio('ε', 'emissivity of the jacket'),
      surface: temperature('T_s', 'surface'),
      ambient: temperature('T_a', 'around'),
    },
    uses: [RADIATION],
    text: 'h_r = ε · σ · (T_s² + T_a²) · (T_s + T_a)',
    source: { work: 'incropera', place: 'radiation to large surroundings' },
    leavesOut: 'Hot neighbours such as an exhaust or a motor, which radiate back.',
    proof: {
      examples: (
        [
          [81.3, 30, 7.3],
          [81.26, 30, 7.299],
          [80.56, 30, 7.275],
          [80.39, 30, 7.269],
          [114.43, 60, 9.607],
          [137.58, 85, 11.653],
        ] as const
      ).map(([surface, ambient, gives]) => ({
        takes: { emissivity: 0.9, surface: celsius(surface), ambient: celsius(ambient) },
        gives,
        within: 0.001,
        source: { work: 'incropera', place: `dull jacket, ${surface} °C in ${ambient} °C; recomputed` } as const,
      })),
    },
  },
  ({ emissivity, surface, ambient }) => emissivity * RADIATION.value * (surface ** 2 + ambient ** 2) * (surface + ambient),
)
