import { type Cycle, lazily, throughCorners } from './cycle.ts'

type Corner = readonly [second: number, kmh: number]

/** One elementary urban cycle of 195 s; a gear change is two seconds at one speed. */
const URBAN: readonly Corner[] = [
  [0, 0],
  [11, 0],
  [15, 15],
  [23, 15],
  [25, 10],
  [28, 0],
  [49, 0],
  [54, 15],
  [56, 15],
  [61, 32],
  [85, 32],
  [93, 10],
  [96, 0],
  [117, 0],
  [122, 15],
  [124, 15],
  [133, 35],
  [135, 35],
  [143, 50],
  [155, 50],
  [163, 35],
  [176, 35],
  [178, 32],
  [185, 10],
  [188, 0],
  [195, 0],
]
const EXTRA_URBAN: readonly Corner[] = [
  [0, 0],
  [20, 0],
  [25, 15],
  [27, 15],
  [36, 35],
  [38, 35],
  [46, 50],
  [48, 50],
  [61, 70],
  [111, 70],
  [119, 50],
  [188, 50],
  [201, 70],
  [251, 70],
  [286, 100],
  [316, 100],
  [336, 120],
  [346, 120],
  [362, 80],
  [370, 50],
  [380, 0],
  [400, 0],
]
const later = (start: number, corners: readonly Corner[]): Corner[] => corners.slice(1).map(([second, kmh]) => [start + second, kmh])

/** The former European approval cycle: four times the urban cycle, then the extra-urban one. */
export const nedc: () => Cycle = lazily(() => ({
  id: 'nedc',
  label: 'NEDC',
  source: { work: 'UN Regulation No. 83', place: 'Annex 4a, segment tables', mark: 'from memory' },
  confidence: {
    level: 'good',
    because: 'segments from memory, their corners confirmed by a second list; distance 0.06 % above the published one',
  },
  phases: [
    { name: 'urban 1', from: 0, to: 195 },
    { name: 'urban 2', from: 195, to: 390 },
    { name: 'urban 3', from: 390, to: 585 },
    { name: 'urban 4', from: 585, to: 780 },
    { name: 'extra-urban', from: 780, to: 1180 },
  ],
  published: { duration: 1180, distance: 11007, max: 120 / 3.6 },
  ...throughCorners([
    [0, 0],
    ...later(0, URBAN),
    ...later(195, URBAN),
    ...later(390, URBAN),
    ...later(585, URBAN),
    ...later(780, EXTRA_URBAN),
  ]),
}))
