/**
 * Battery cars of model year 2022 as certification data describe them; named by class, not by maker. Inputs and consumption: US EPA, model-year 2022 fleet table (file of
 * 2023-08-31) and MPGe table (file of 2023-07-25). Rows are found by certification manufacturer code and model-type index.
 *
 * `mass` is the equivalent test weight [lb]; A [lbf], B [lbf/mph], C [lbf/mph²] the target coast-down coefficients; `hp` the road-load power at 50 mph as published and as
 * the coefficients give it; `road` [kW] at 50, 80, 100 and 120 km/h and wheel energies [Wh/km] (driving, braking; then with 1.5 % rotating inertia) recomputed by two programs;
 * `mpge` the published wall consumption, unadjusted, UDDS and HWFET.
 */
export type PublishedCar = {
  readonly name: string
  readonly row: string
  readonly mass: number
  readonly coefficients: readonly [a: number, b: number, c: number]
  readonly hp: readonly [published: number, computed: number]
  readonly road: readonly [number, number, number, number]
  readonly wheel: { readonly udds: readonly [number, number, number, number]; readonly hwfet: readonly [number, number, number, number] }
  readonly mpge: { readonly udds: number; readonly hwfet: number }
  readonly motors: readonly number[]
  readonly kind: 'permanent-magnet' | 'induction'
  readonly axles: readonly ('front' | 'rear')[]
  readonly battery: number
  readonly outlier?: string
}

export const PUBLISHED_CARS: readonly PublishedCar[] = [
  {
    name: 'BEV-01 small crossover, front drive',
    row: 'GMX / 54',
    mass: 4000,
    coefficients: [31.12, 0.0175, 0.02251],
    hp: [11.8, 11.77],
    road: [3.3, 8.66, 14.72, 23.36],
    wheel: { udds: [135, 65.4, 136.2, 66.6], hwfet: [125.7, 14.2, 126, 14.5] },
    mpge: { udds: 178.2, hwfet: 149 },
    motors: [150e3],
    kind: 'permanent-magnet',
    axles: ['front'],
    battery: 65,
  },
  {
    name: 'BEV-02 three-door city car, front drive',
    row: 'BMX / 92',
    mass: 3500,
    coefficients: [27.4, 0.431, 0.01495],
    hp: [11.5, 11.51],
    road: [3.41, 8.48, 13.83, 21.15],
    wheel: { udds: [125.2, 54.8, 126.3, 55.9], hwfet: [120, 11.5, 120.2, 11.7] },
    mpge: { udds: 169.6, hwfet: 143.5 },
    motors: [135e3],
    kind: 'permanent-magnet',
    axles: ['front'],
    battery: 32.6,
  },
  {
    name: 'BEV-03 compact hatchback, front drive, small battery',
    row: 'NSX / 902',
    mass: 3875,
    coefficients: [25.89, 0.3449, 0.01945],
    hp: [12.2, 12.23],
    road: [3.42, 9, 15.13, 23.69],
    wheel: { udds: [133.9, 62.5, 135.1, 63.7], hwfet: [128.8, 13.1, 129.1, 13.5] },
    mpge: { udds: 175.6, hwfet: 141.2 },
    motors: [110e3],
    kind: 'permanent-magnet',
    axles: ['front'],
    battery: 40,
  },
  {
    name: 'BEV-04 compact hatchback, front drive, large battery',
    row: 'NSX / 903',
    mass: 4250,
    coefficients: [28.15, 0.2892, 0.02009],
    hp: [12.4, 12.38],
    road: [3.49, 9.11, 15.28, 23.93],
    wheel: { udds: [142.7, 69.7, 144, 71], hwfet: [132.2, 15.1, 132.5, 15.5] },
    mpge: { udds: 168.5, hwfet: 139 },
    motors: [160e3],
    kind: 'permanent-magnet',
    axles: ['front'],
    battery: 62,
  },
  {
    name: 'BEV-05 small crossover, front drive',
    row: 'HYX / 22',
    mass: 4000,
    coefficients: [24.859, -0.20036, 0.023656],
    hp: [9.9, 9.86],
    road: [2.56, 7.25, 12.82, 20.97],
    wheel: { udds: [124.4, 69.2, 125.7, 70.5], hwfet: [109.7, 15.8, 110, 16.1] },
    mpge: { udds: 195.5, hwfet: 155.5 },
    motors: [150e3],
    kind: 'permanent-magnet',
    axles: ['front'],
    battery: 67.5,
  },
  {
    name: 'BEV-06 compact crossover, rear drive',
    row: 'VGA / 309',
    mass: 4750,
    coefficients: [23.987, 0.29124, 0.016006],
    hp: [10.5, 10.48],
    road: [3, 7.71, 12.84, 19.97],
    wheel: { udds: [145.1, 82.8, 146.6, 84.3], hwfet: [118.6, 19.6, 119, 20.1] },
    mpge: { udds: 169.556, hwfet: 142.733 },
    motors: [150e3],
    kind: 'permanent-magnet',
    axles: ['rear'],
    battery: 82,
  },
  {
    name: 'BEV-07 mid-size saloon, rear drive',
    row: 'TSL / 31',
    mass: 4250,
    coefficients: [37.17, 0.047, 0.0144],
    hp: [10.1, 10.07],
    road: [3.25, 7.42, 11.82, 17.9],
    wheel: { udds: [137.7, 70.5, 139, 71.8], hwfet: [111.6, 16.7, 112, 17.1] },
    mpge: { udds: 185.3, hwfet: 170.1 },
    motors: [192e3],
    kind: 'permanent-magnet',
    axles: ['rear'],
    battery: 60,
  },
  {
    name: 'BEV-08 compact crossover, two motors',
    row: 'VVX / 203',
    mass: 5000,
    coefficients: [30.9, 0.4793, 0.02025],
    hp: [14.1, 14.07],
    road: [4.04, 10.36, 17.16, 26.57],
    wheel: { udds: [166.2, 82.5, 167.8, 84], hwfet: [150.9, 18.1, 151.3, 18.5] },
    mpge: { udds: 128.4, hwfet: 109.9 },
    motors: [150e3, 150e3],
    kind: 'permanent-magnet',
    axles: ['front', 'rear'],
    battery: 78,
  },
  {
    name: 'BEV-09 large crossover, two induction motors',
    row: 'VGA / 350',
    mass: 6000,
    coefficients: [35.362, 0.26405, 0.019776],
    hp: [13.2, 13.07],
    road: [3.87, 9.62, 15.83, 24.47],
    wheel: { udds: [184.4, 103.9, 186.3, 105.8], hwfet: [148.3, 24.9, 148.8, 25.4] },
    mpge: { udds: 105.1, hwfet: 104.7 },
    motors: [150e3, 150e3],
    kind: 'induction',
    axles: ['front', 'rear'],
    battery: 95,
    outlier: 'an outlier among its class, no plain model meets it',
  },
]

const LB = 0.45359237,
  LBF = 4.4482216152605,
  MPH = 0.44704
/** Coast-down coefficients in SI. */
export const siRoad = ({ coefficients: [a, b, c] }: PublishedCar): { f0: number; f1: number; f2: number } => ({
  f0: a * LBF,
  f1: (b * LBF) / MPH,
  f2: (c * LBF) / MPH ** 2,
})
export const siMass = ({ mass }: PublishedCar): number => mass * LB
/** Wall consumption [Wh/km] behind miles per gallon equivalent: 33 705 Wh to the gallon (40 CFR Part 600). */
export const wallOf = (mpge: number): number => 33705 / mpge / 1.609344
