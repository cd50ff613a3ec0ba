import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'sums and moments' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const masses = (symbol: string, label: string) => ({ symbol, unit: 'kg', label, many: true }) as const
const places = (symbol: string, label: string) => ({ symbol, unit: 'm', label, many: true }) as const

/** Mass of the finished car: what was weighed, less what came out, plus what went in. */
export const massByLedger = formula(
  {
    id: 'mass-by-ledger',
    label: 'Mass by ledger',
    gives: mass('m', 'mass'),
    takes: {
      front: mass('m_F0', 'front axle as weighed'),
      rear: mass('m_R0', 'rear axle as weighed'),
      added: masses('m_a', 'added'),
      removed: masses('m_o', 'taken out'),
    },
    text: 'm = m_F0 + m_R0 + Σ m_a − Σ m_o',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { front: 620, rear: 480, added: [55, 12, 110, 170, 14], removed: [125, 22, 48, 14] },
          gives: 1252,
          within: 1e-9,
          source: { work: 'statics', place: 'ledger of nine parts, worked by hand' },
        },
      ],
    },
  },
  ({ front, rear, added, removed }) => {
    let m = front + rear
    for (const a of added) m += a
    for (const o of removed) m -= o
    return m
  },
)

/** Rear axle mass after the changes: moments about the front axle. */
export const rearAxleByLedger = formula(
  {
    id: 'rear-axle-by-ledger',
    label: 'Rear axle mass by ledger',
    gives: mass('m_R', 'rear axle mass'),
    takes: {
      rear: mass('m_R0', 'rear axle before'),
      added: masses('m_a', 'added'),
      addedX: places('x_a', 'added, behind the front axle'),
      removed: masses('m_o', 'taken out'),
      removedX: places('x_o', 'taken out, behind the front axle'),
      wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' },
    },
    text: 'm_R = m_R0 + (Σ m_a · x_a − Σ m_o · x_o) / L',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: {
            rear: 480,
            added: [55, 12, 110, 170, 14],
            addedX: [0.1, 0.05, -0.1, 2.3, 2.6],
            removed: [125, 22, 48, 14],
            removedX: [-0.05, 1.6, 2.2, -0.45],
            wheelbase: 2.45,
          },
          gives: 600.1,
          within: 0.005,
          source: { work: 'statics', place: 'ledger of nine parts, worked by hand' },
        },
      ],
    },
  },
  ({ rear, added, addedX, removed, removedX, wheelbase }) => {
    let moment = 0
    for (let i = 0; i < added.length; i++) moment += (added[i] as number) * (addedX[i] as number)
    for (let i = 0; i < removed.length; i++) moment -= (removed[i] as number) * (removedX[i] as number)
    return rear + moment / wheelbase
  },
)

/** What one axle does not carry, the other does. */
export const otherAxle = formula(
  {
    id: 'other-axle',
    label: 'Other axle mass',
    gives: mass('m_F', 'front axle mass'),
    takes: { total: mass('m', 'total'), one: mass('m_R', 'one axle') },
    text: 'm_F = m − m_R',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ total, one }) => total - one,
)

/** Two wheels of an axle, or two axles of a car. */
export const twoTogether = formula(
  {
    id: 'two-together',
    label: 'Sum of two',
    gives: mass('m', 'together'),
    takes: { one: mass('m_1', 'one'), other: mass('m_2', 'other') },
    text: 'm = m_1 + m_2',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ one, other }) => one + other,
)

/** How far two weighings of one thing are apart. */
export const massesApart = formula(
  {
    id: 'masses-apart',
    label: 'Two weighings apart',
    gives: mass('Δm', 'apart'),
    takes: { one: mass('m_1', 'one'), other: mass('m_2', 'other') },
    text: 'Δm = abs(m_1 − m_2)',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ one, other }) => Math.abs(one - other),
)

/** Distance of the centre of mass behind the front axle. */
export const centreOfMassX = formula(
  {
    id: 'centre-of-mass-x',
    label: 'Centre of mass, behind the front axle',
    gives: { symbol: 'x_g', unit: 'm', shows: 'length' },
    takes: { rear: mass('m_R', 'rear axle mass'), total: mass('m', 'mass'), wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' } },
    text: 'x_g = m_R · L / m',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { rear: 600.1, total: 1252, wheelbase: 2.45 },
          gives: 1.1743,
          within: 0.00005,
          source: { work: 'statics', place: 'ledger of nine parts, worked by hand' },
        },
      ],
    },
  },
  ({ rear, total, wheelbase }) => (rear * wheelbase) / total,
)

/** Several equal things. */
export const severalAlike = formula(
  {
    id: 'several-alike',
    label: 'Mass of several alike and what holds them',
    gives: mass('m', 'mass'),
    takes: {
      count: { symbol: 'n', unit: '1', label: 'how many', shows: 'count' },
      each: mass('m_1', 'each'),
      overhead: mass('m_box', 'box, lid, plates, links'),
    },
    text: 'm = n · m_1 + m_box',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ count, each, overhead }) => count * each + overhead,
)

/** Mass of modules that stand in no box yet, with the boxes they will need. */
export const unboxedMass = formula(
  {
    id: 'unboxed-mass',
    label: 'Mass of modules in no box yet',
    gives: mass('m', 'mass with boxes'),
    takes: {
      wanted: { symbol: 'n_w', unit: '1', label: 'modules of the pack', shows: 'count' },
      boxed: { symbol: 'n_b', unit: '1', label: 'modules in boxes', shows: 'count' },
      each: mass('m_1', 'each'),
      share: { symbol: 'k_box', unit: '1', label: 'boxes and links over the mass of the modules', shows: 'share' },
    },
    text: 'm = (n_w − n_b) · m_1 · (1 + k_box)',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ wanted, boxed, each, share }) => (wanted - boxed) * each * (1 + share),
)

/** The same with two forms of module in the box. */
export const boxOfTwoForms = formula(
  {
    id: 'box-of-two-forms',
    label: 'Mass of a box with two forms of module',
    gives: mass('m', 'mass'),
    takes: {
      count: { symbol: 'n', unit: '1', label: 'modules', shows: 'count' },
      each: mass('m_1', 'each'),
      others: { symbol: 'n_o', unit: '1', label: 'modules of the other form', shows: 'count' },
      otherEach: mass('m_o', 'each of the other form'),
      overhead: mass('m_box', 'box, lid, plates, links'),
    },
    text: 'm = n · m_1 + n_o · m_o + m_box',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ count, each, others, otherEach, overhead }) => count * each + others * otherEach + overhead,
)

/** Mass of modules of two forms that stand in no box yet, with the boxes they will need. More in the boxes of one form than there are does not stand for the other. */
export const unboxedOfTwoForms = formula(
  {
    id: 'unboxed-mass-of-two-forms',
    label: 'Mass of modules in no box yet, two forms',
    gives: mass('m', 'mass with boxes'),
    takes: {
      wanted: { symbol: 'n_w', unit: '1', label: 'modules of the pack', shows: 'count' },
      boxed: { symbol: 'n_b', unit: '1', label: 'modules in boxes', shows: 'count' },
      each: mass('m_1', 'each'),
      othersWanted: { symbol: 'o_w', unit: '1', label: 'modules of the other form in the pack', shows: 'count' },
      othersBoxed: { symbol: 'o_b', unit: '1', label: 'modules of the other form in boxes', shows: 'count' },
      otherEach: mass('m_o', 'each of the other form'),
      share: { symbol: 'k_box', unit: '1', label: 'boxes and links over the mass of the modules', shows: 'share' },
    },
    text: 'm = (max(0, n_w − n_b) · m_1 + max(0, o_w − o_b) · m_o) · (1 + k_box)',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { wanted: 20, boxed: 18, each: 12, othersWanted: 2, othersBoxed: 3, otherEach: 24, share: 0.25 },
          gives: 30,
          within: 1e-9,
          source: { work: 'statics', place: 'two modules of 12 kg with a quarter more, worked by hand' },
        },
      ],
    },
  },
  ({ wanted, boxed, each, othersWanted, othersBoxed, otherEach, share }) =>
    (Math.max(0, wanted - boxed) * each + Math.max(0, othersWanted - othersBoxed) * otherEach) * (1 + share),
)

/** Share of the mass on the wheels of one side. */
export const sideShare = formula(
  {
    id: 'side-share',
    label: 'Share on the left wheels',
    gives: { symbol: 's_L', unit: '1', shows: 'share' },
    takes: { one: mass('m_L', 'left wheels'), other: mass('m_Ri', 'right wheels') },
    text: 's_L = m_L / (m_L + m_Ri)',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ one, other }) => one / (one + other),
)
