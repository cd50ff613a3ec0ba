import { type Fact, standard } from '../working/value.ts'

const PRACTICE = { work: 'practice', place: 'clearances left in conversions', mark: 'common practice' } as const
const habit = (name: string, label: string, symbol: string, millimetres: number): Fact =>
  standard(`clearance-${name}`, label, symbol, millimetres / 1000, 'm', PRACTICE)

/** What the trade leaves free, m: the lower end where a habit is a range. `atMotor` comes on top of the movement under full torque. */
export const CLEARANCE_HABITS = {
  toBody: habit('to-body', 'Box to body, fixed parts', 'd_body', 8),
  toTrim: habit('to-trim', 'Box to trim that comes off', 'd_trim', 5),
  atMotor: habit('at-motor', 'To what moves with the motor, on top of its movement under full torque', 'd_mot', 15),
  toShaft: habit('to-shaft', 'To a turning shaft, over full travel', 'd_shaft', 25),
  toJoint: habit('to-joint', 'To a boot or joint of a shaft, over full travel', 'd_joint', 20),
  toTyre: habit('to-tyre', 'To a tyre, over full travel and lock', 'd_tyre', 15),
  forChain: habit('for-chain', 'More for a snow chain', 'd_chain', 12),
  toSharpEdge: habit('to-sharp-edge', 'Hose or high-voltage cable to a sharp edge', 'd_edge', 20),
  toHotPart: habit('to-hot-part', 'Hose or high-voltage cable to a hot part without shield', 'd_hot', 50),
  overLid: habit('over-lid', 'For a hand over the lid, on top of lid and seal, where a box is lifted out', 'd_hand', 60),
  roundArm: habit('round-arm', 'From the line of an arm with a thick glove to what stands beside it', 'd_arm', 60),
  armIn: habit('arm-in', 'Depth an arm reaches in through an opening, gloved', 'd_in', 500),
  wayIn: habit('way-in', 'Each side of a part along its way in', 'd_way', 20),
} as const satisfies Readonly<Record<string, Fact>>
