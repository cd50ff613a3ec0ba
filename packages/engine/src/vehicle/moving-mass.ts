import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const STATICS = { work: 'statics', place: 'moments about an axle' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const

/** The finished car is checked on an axle weighbridge; a plan should be inside by as much as that can err. */
export const WEIGHBRIDGE = standard('weighbridge', 'Accuracy of an axle weighbridge', 'm_wb', 10, 'kg', {
  work: 'practice',
  place: 'axle weighbridge, ± 10 kg',
  mark: 'common practice',
})

/** How far a box has to slide along the car to bring an axle inside its rating. */
export const slideNeeded = formula(
  {
    id: 'slide-needed',
    label: 'Slide that relieves an axle',
    gives: length('s', 'slide'),
    takes: {
      room: mass('Δm', 'room of the axle, negative when overloaded'),
      wheelbase: length('L', 'wheelbase'),
      box: mass('m_box', 'box'),
    },
    uses: [WEIGHBRIDGE],
    text: 's = max(0, m_wb − Δm) · L / m_box',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { room: -15, wheelbase: 2.5, box: 50 },
          gives: 1.25,
          within: 1e-12,
          source: { work: 'statics', place: '25 kg to take off with 50 kg on 2.5 m' },
        },
      ],
    },
  },
  ({ room, wheelbase, box }) => (Math.max(0, WEIGHBRIDGE.value - room) * wheelbase) / box,
)

/** How many modules have to move from one box to another to bring an axle inside its rating. */
export const modulesToMove = formula(
  {
    id: 'modules-to-move',
    label: 'Modules to move',
    gives: { symbol: 'n', unit: '1', shows: 'count' },
    takes: {
      room: mass('Δm', 'room of the axle, negative when overloaded'),
      wheelbase: length('L', 'wheelbase'),
      module: mass('m_1', 'one module'),
      from: length('x_1', 'box they leave'),
      to: length('x_2', 'box they go to'),
    },
    uses: [WEIGHBRIDGE],
    text: 'n = ceil(max(0, m_wb − Δm) · L / (m_1 · |x_2 − x_1|))',
    source: STATICS,
    leavesOut: 'Room in the box they go to, and another mass of the boxes themselves.',
    proof: {
      examples: [
        {
          takes: { room: -15, wheelbase: 2.5, module: 12, from: 2.5, to: 0 },
          gives: 3,
          within: 0,
          source: { work: 'statics', place: '25 kg to take off, 12 kg for each module: the third does it' },
        },
      ],
    },
  },
  ({ room, wheelbase, module, from, to }) =>
    Math.ceil((Math.max(0, WEIGHBRIDGE.value - room) * wheelbase) / (module * Math.abs(to - from))),
)
