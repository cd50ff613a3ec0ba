/**
 * Load index → kg per tyre, from 60 (UN Regulation No. 30, Annex 4; ETRTO Standards Manual). 70 to 110 were checked against two printed
 * tables; the rest is from memory.
 */
const FIRST = 60
const LOADS = [
  '250 257 265 272 280 290 300 307 315 325', // 60
  '335 345 355 365 375 387 400 412 425 437', // 70
  '450 462 475 487 500 515 530 545 560 580', // 80
  '600 615 630 650 670 690 710 730 750 775', // 90
  '800 825 850 875 900 925 950 975 1000 1030', // 100
  '1060 1090 1120 1150 1180 1215 1250 1285 1320 1360', // 110
  '1400 1450 1500 1550 1600 1650 1700', // 120
].flatMap(row => row.split(' ').map(Number))
const CHECKED = { from: 70, to: 110 }

/** Speed symbol → km/h (same works). N to Y were checked against a printed table; J to M are from memory. */
const SPEEDS: Readonly<Record<string, number>> = {
  J: 100,
  K: 110,
  L: 120,
  M: 130,
  N: 140,
  P: 150,
  Q: 160,
  R: 170,
  S: 180,
  T: 190,
  U: 200,
  H: 210,
  V: 240,
  W: 270,
  Y: 300,
}
const FROM_MEMORY = 'JKLM'

export type Looked = { readonly value: number; readonly mark?: string }

/** Load one tyre may carry [kg]; undefined outside 60 to 126. */
export function loadOf(index: number): Looked | undefined {
  const value = LOADS[index - FIRST]
  if (value === undefined) return undefined
  return index < CHECKED.from || index > CHECKED.to ? { value, mark: `load index ${index} is ${value} kg (from memory)` } : { value }
}

/** Speed [m/s] of a symbol; undefined for one that is not held. */
export function speedOf(symbol: string): Looked | undefined {
  const kmh = SPEEDS[symbol]
  if (kmh === undefined) return undefined
  return FROM_MEMORY.includes(symbol)
    ? { value: kmh / 3.6, mark: `speed symbol ${symbol} is ${kmh} km/h (from memory)` }
    : { value: kmh / 3.6 }
}

export const LOAD_RANGE = `${FIRST} to ${FIRST + LOADS.length - 1}`
export const SPEED_SYMBOLS = Object.keys(SPEEDS).join(', ')
