import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'
import { length, MM, MM2, practice, ratio } from './conductor-symbols.ts'

/** How a cable is bent: once and held, without or with a screen, or again and again. */
export type Bent = 'unscreened, held' | 'screened, held' | 'screened, moving'
/** Of 5 to 6 diameters named for held screened cable the larger is taken. */
const BENT: Readonly<Record<Bent, number>> = { 'unscreened, held': 4, 'screened, held': 6, 'screened, moving': 10 }
/** Least inner radius of a bend in outside diameters, by how the cable is bent. Common practice: the maker's sheet comes first. */
export const bendFactor = (bent: Bent): Fact => ({
  ...standard(
    `bend.${bent.replace(', ', '-')}`,
    `bend of cable, ${bent}`,
    'n_b',
    BENT[bent],
    '1',
    practice('bends of single flexible cables'),
  ),
  shows: 'ratio',
})

/** Least inner radius of a cable's bend. */
export const bendRadius = formula(
  {
    id: 'bend-radius',
    label: 'Least bend of a cable',
    gives: length('r_b', 'inner radius'),
    takes: { factor: ratio('n_b', 'radius in diameters'), outside: length('D', 'outside diameter') },
    text: 'r_b = n_b · D',
    source: practice('bends of single flexible cables'),
    leavesOut: 'The maker’s sheet, which comes first.',
    proof: { none: 'a rule of thumb, by definition' },
  },
  ({ factor, outside }) => factor * outside,
)

/** How far apart cables are held, and the thinnest conductor that may run on its own for more than 200 mm. */
export const HELD = {
  any: {
    ...standard('cable.support', 'supports of cables apart, at most', 'ℓ_s', 450 * MM, 'm', { work: 'iso-10133', place: '7.3' }),
    shows: 'length',
  },
  battery: {
    ...standard('cable.support-battery', 'supports of battery cables apart, at most', 'ℓ_s', 300 * MM, 'm', {
      work: 'iso-10133',
      place: '7.4',
    }),
    shows: 'length',
  },
  thinnest: standard('cable.thinnest', 'thinnest single conductor above 200 mm', 'S', 1 * MM2, 'm²', { work: 'iso-10133', place: '7.7' }),
} as const
