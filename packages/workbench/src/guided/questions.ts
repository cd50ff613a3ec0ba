import { layouts } from './layouts.ts'

/** Answers as they were typed, by the path of the file they go to. */
export type Given = Readonly<Record<string, string>>

export type Chapter = 'layout' | 'the car' | 'its driveline' | 'what it must do'
/** One question of the guided start, in the order they are asked. */
export type Question = {
  readonly id: string
  readonly chapter: Chapter
  /** As a mechanic would say it. */
  readonly asks: string
  /** Where the answer goes, one field each; kind, choices and limits are those of the schema. */
  readonly paths: readonly string[]
  readonly help?: string
  /** What is unanswered while it stays open. This and `left` left out: it may not stay open, no concept is made without it. */
  readonly open?: string
  /** What is so while it stays open, as a sentence, where more than an answer is missing or nothing is. */
  readonly left?: string
  /** Answers to choose from, where fewer are possible than the schema has. */
  readonly choices?: (given: Given) => readonly string[]
  /** Whether it concerns this car; left out: every car. */
  readonly concerns?: (given: Given) => boolean
  /** What most people answer: offered, never filled in. */
  readonly offers?: Readonly<Record<string, string>>
  /** What each field is called here, in the order of the paths, where the label of the schema does not tell them apart. */
  readonly called?: readonly string[]
}

export const ENGINE = 'donor.engine-position'
export const DRIVEN = 'donor.driven-wheels'
const USUAL = 'trips.named.usual'
const HOME = 'charging.places.home'
const GOALS = 'brief.goals'
const under = (at: string, ...keys: readonly string[]): readonly string[] => keys.map(k => `${at}.${k}`)

const boxMayStay = (g: Given): boolean => !(g[DRIVEN] === 'all' && g[ENGINE] !== 'longitudinal front')
const hasTransfer = (g: Given): boolean => g[ENGINE] === 'longitudinal front' && (g[DRIVEN] === 'part-time 4x4' || g[DRIVEN] === 'all')

const LAYOUT: readonly Question[] = [
  { id: 'engine', chapter: 'layout', asks: 'Where does the engine sit?', paths: [ENGINE] },
  {
    id: 'driven',
    chapter: 'layout',
    asks: 'Which wheels does it drive?',
    paths: [DRIVEN],
    choices: g => layouts[g[ENGINE] as keyof typeof layouts] ?? [],
  },
]
const CAR: readonly Question[] = [
  { id: 'car', chapter: 'the car', asks: 'What do you call the car?', paths: ['car'], left: 'Left open, the car has no name yet.' },
  { id: 'body', chapter: 'the car', asks: 'What body is it?', paths: ['donor.body'], open: 'road load, unless it was measured' },
  {
    id: 'papers',
    chapter: 'the car',
    asks: 'Which category is it in, and when was it first registered?',
    paths: under('donor', 'category', 'first-registered'),
    open: 'what the rule set says of the donor car',
  },
  {
    id: 'axles',
    chapter: 'the car',
    asks: 'What does each axle weigh now, with how much fuel in how large a tank?',
    help: 'Nobody aboard. An axle weighbridge will do; four wheel scales are better.',
    paths: under('donor.weighing', 'front', 'rear', 'fuel', 'tank'),
    open: 'kerb mass, axle loads, and all that follows from mass',
  },
  {
    id: 'ratings',
    chapter: 'the car',
    asks: 'What may each axle and the whole car weigh?',
    help: 'Plate on the body, registration paper.',
    paths: under('donor.ratings', 'front-axle', 'rear-axle', 'total'),
    open: 'room on the axles, payload, seats',
  },
  { id: 'wheelbase', chapter: 'the car', asks: 'From axle to axle, how long?', paths: ['donor.wheelbase'], open: 'axle loads' },
  { id: 'tyre', chapter: 'the car', asks: 'What does the sidewall of the tyre say?', paths: ['donor.tyre'], open: 'gearing, speeds, pull' },
  {
    id: 'old-engine',
    chapter: 'the car',
    asks: 'What did the engine give, and where is its red line?',
    paths: under('donor.engine', 'power', 'torque', 'red-line', 'fuel'),
    open: 'what the rule set says on power',
  },
  {
    id: 'spaces',
    chapter: 'the car',
    asks: 'How far behind the front axle is the middle of the engine, and of the tank?',
    help: 'Ahead of the axle counts as minus. Battery boxes are planned there.',
    paths: ['donor.removed.engine.x', 'donor.removed.tank.x'],
    called: ['Engine', 'Tank'],
    left: 'Left open, what comes out is not taken off, and boxes have no place.',
  },
  {
    id: 'seats',
    chapter: 'the car',
    asks: 'Seats in each row, and how far behind the front axle people sit?',
    paths: ['donor.seats.front.places', 'donor.seats.front.x', 'donor.seats.rear.places', 'donor.seats.rear.x', 'donor.luggage-x'],
    called: [
      'Front seats',
      'People in front, behind the axle',
      'Rear seats',
      'People in the rear, behind the axle',
      'Luggage, behind the axle',
    ],
    open: 'axle loads with people aboard',
  },
  {
    id: 'assists',
    chapter: 'the car',
    asks: 'What helps the brakes and the steering?',
    paths: ['donor.brakes.assist', 'donor.steering.assist'],
    open: 'whether a pump of their own is needed',
  },
]
const DRIVELINE: readonly Question[] = [
  {
    id: 'gears',
    chapter: 'its driveline',
    asks: 'What ratios has the gearbox?',
    help: 'Handbook, or count turns in and out. Leave what it does not have.',
    paths: under('donor.gearbox.gears', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'),
    called: ['First', 'Second', 'Third', 'Fourth', 'Fifth', 'Sixth'],
    open: 'everything with the gearbox kept',
    concerns: boxMayStay,
  },
  {
    id: 'axle-ratio',
    chapter: 'its driveline',
    asks: 'What is the axle ratio?',
    paths: ['donor.final-drive'],
    open: 'everything that keeps the axle',
    concerns: boxMayStay,
  },
  {
    id: 'transfer-case',
    chapter: 'its driveline',
    asks: 'What ratios has the transfer case?',
    paths: under('donor.transfer-case', 'high', 'low'),
    open: 'everything through the transfer case',
    concerns: hasTransfer,
  },
]
const BRIEF: readonly Question[] = [
  {
    id: 'rules',
    chapter: 'what it must do',
    asks: 'Under whose rules is it approved?',
    paths: ['brief.rules'],
    open: 'what the rule set says',
  },
  {
    id: 'who',
    chapter: 'what it must do',
    asks: 'Who does the work?',
    paths: ['brief.workshop'],
    left: 'Left open, the hours told are those of a workshop.',
  },
  {
    id: 'people',
    chapter: 'what it must do',
    asks: 'How many seats must stay, with how much luggage?',
    paths: ['brief.seats', 'brief.luggage'],
    open: 'whether people and luggage may still come along',
  },
  {
    id: 'usual-load',
    chapter: 'what it must do',
    asks: 'Who is aboard when the goals below must be met?',
    paths: under('brief.loads.usual', 'people', 'luggage'),
    offers: { 'brief.loads.usual.people': '1', 'brief.loads.usual.luggage': '0 kg' },
    open: 'every goal',
  },
  {
    id: 'conditions',
    chapter: 'what it must do',
    asks: 'On what road, on what day, how high?',
    paths: under('brief.conditions', 'surface', 'temperature', 'altitude', 'head-wind'),
    offers: { 'brief.conditions.surface': 'dry', 'brief.conditions.head-wind': '0 km/h' },
    open: 'every goal of speed and pull',
  },
  {
    id: 'top-speed',
    chapter: 'what it must do',
    asks: 'How fast must it go?',
    paths: under(`${GOALS}.top-speed`, 'speed'),
    left: 'Left open, the car has no such goal to meet.',
  },
  {
    id: 'sprint',
    chapter: 'what it must do',
    asks: 'From which speed to which, within what time?',
    paths: under(`${GOALS}.sprint`, 'from', 'to', 'within'),
    offers: { [`${GOALS}.sprint.from`]: '0 km/h', [`${GOALS}.sprint.to`]: '100 km/h' },
    left: 'Left open, the car has no such goal to meet.',
  },
  {
    id: 'pull-away',
    chapter: 'what it must do',
    asks: 'On what slope must it pull away?',
    paths: under(`${GOALS}.pull-away`, 'slope'),
    left: 'Left open, the car has no such goal to meet.',
  },
  {
    id: 'range',
    chapter: 'what it must do',
    asks: 'How far must it go, and what must be left then?',
    paths: [`${GOALS}.range.distance`, 'brief.reserve'],
    left: 'Left open, range stays unanswered, and the smallest pack is planned.',
  },
  {
    id: 'trip',
    chapter: 'what it must do',
    asks: 'On what kind of drive: a standard cycle, or a steady speed?',
    help: 'One of the two: a cycle such as wltc-3b, nedc or udds, or a speed with its slope, 0 % on the level.',
    paths: under(USUAL, 'cycle', 'speed', 'slope'),
    open: 'range',
  },
  {
    id: 'day',
    chapter: 'what it must do',
    asks: 'On what day: air, cells at the start, road, height, wind, heater, everything on 12 V?',
    paths: under(USUAL, 'temperature', 'pack-temperature', 'surface', 'altitude', 'head-wind', 'cabin-power', 'other-power'),
    offers: { [`${USUAL}.head-wind`]: '0 km/h' },
    open: 'range',
  },
  {
    id: 'socket',
    chapter: 'what it must do',
    asks: 'Where is it charged: what socket, voltage, current, phases, and what carries its cable?',
    paths: under(HOME, 'socket', 'voltage', 'current', 'phases', 'cable'),
    left: 'Left open, charging stays unanswered, and the smallest charger is planned.',
  },
  {
    id: 'charging',
    chapter: 'what it must do',
    asks: 'From how full to how full, within what time, with cells how warm?',
    paths: under(`${GOALS}.charging`, 'from', 'to', 'within', 'temperature'),
    called: ['Charge it starts at', 'Charge it ends at', 'Within', 'Cell temperature'],
    left: 'Left open, the car has no such goal to meet.',
  },
  { id: 'budget', chapter: 'what it must do', asks: 'What may the parts cost?', paths: ['brief.budget'], open: 'whether it is too dear' },
]

/** The guided start, layout first. */
export const QUESTIONS: readonly Question[] = [...LAYOUT, ...CAR, ...DRIVELINE, ...BRIEF]

/** The questions that concern a car as far as it is known. */
export const questionsFor = (given: Given): readonly Question[] => QUESTIONS.filter(q => q.concerns?.(given) ?? true)
