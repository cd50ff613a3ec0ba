import { type Edit, type Issue, nearest, readConversion } from '@ampwright/conversion'
import { lookUps } from '../look-ups.ts'
import { Refusal } from '../refusal.ts'
import { type Start, startText } from '../start.ts'
import { type Given, QUESTIONS } from './questions.ts'
import { edited } from './trial.ts'

/** What is wrong with an answer: its place, what was found and what is accepted. */
export type AnswerProblem = {
  readonly path: string
  readonly what: string
  readonly found: string
  readonly accepted: string
  readonly nearest?: string
}

const TRIP = 'trips.named.usual'
const PLACE = 'charging.places.home'
type Links = { readonly kind: string; readonly to?: readonly [key: string, name: string, at: string] }
/** Kinds of the goals, and the links between a goal and its trip or place: they follow from which question was answered. */
const KINDS: Readonly<Record<string, Links>> = {
  'brief.goals.top-speed': { kind: 'top speed' },
  'brief.goals.sprint': { kind: 'acceleration' },
  'brief.goals.pull-away': { kind: 'hill start' },
  'brief.goals.range': { kind: 'range', to: ['trip', 'usual', TRIP] },
  'brief.goals.charging': { kind: 'charging', to: ['place', 'home', PLACE] },
}
/** Which kind of goal an answer belongs to. */
export const kindAsked = (path: string): string | undefined => KINDS[path.replace(/\.kind$/, '')]?.kind

/** Answers the text of a new conversion starts with. */
const OF_START: Readonly<Record<string, keyof Start>> = {
  car: 'name',
  'donor.engine-position': 'engine',
  'donor.driven-wheels': 'driven',
  'donor.body': 'body',
  'brief.rules': 'rules',
}
/** Maps the start leaves empty in one line: written anew, a line for each. */
const MAPS = ['brief.loads', 'brief.goals', 'donor.weighing', 'donor.removed', 'trips.named', 'charging.places']
const said = (given: Given): Given =>
  Object.fromEntries(Object.entries(given).flatMap(([path, text]) => (text.trim() === '' ? [] : [[path, text.trim()]])))
const within = (given: Given, at: string): boolean => Object.keys(given).some(path => path.startsWith(`${at}.`))

/** Every problem of the answers, each with its place; none where they make a file that can be read. */
export function answerProblems(given: Given): readonly AnswerProblem[] {
  const asked = new Set(QUESTIONS.flatMap(q => q.paths)),
    known = Object.fromEntries(Object.entries(said(given)).filter(([path]) => asked.has(path)))
  const strange = Object.keys(given).filter(path => !asked.has(path))
  return [
    ...strange.map((path): AnswerProblem => {
      const near = nearest(path, [...asked])
      return {
        path,
        what: 'no question of the guided start',
        found: `«${path}»`,
        accepted: 'a path one of them names',
        ...(near ? { nearest: near } : {}),
      }
    }),
    ...(known[`${TRIP}.cycle`] !== undefined && isSteady(known)
      ? [{ path: `${TRIP}.speed`, what: 'a cycle and a steady speed at once', found: 'both', accepted: 'one of the two' }]
      : readConversion(written(known), { lookUps: lookUps() }).issues.map(problemOf)),
  ]
}
const problemOf = ({ path, what, found, accepted, nearest: near }: Issue): AnswerProblem => ({
  path,
  what,
  found,
  accepted,
  ...(near === undefined ? {} : { nearest: near }),
})

/** The text of a conversion from the answers of the guided start: what was said, nothing else. Throws Refusal naming every problem. */
export function conversionText(given: Given): string {
  const problems = answerProblems(given)
  if (problems.length)
    throw new Refusal(
      problems
        .map(
          p =>
            `${p.path}: ${p.what}; found ${p.found}${p.accepted ? `; accepted ${p.accepted}` : ''}${p.nearest ? `; did you mean ${p.nearest}?` : ''}`,
        )
        .join('\n'),
    )
  return written(said(given))
}

function written(given: Given): string {
  const start: Start = Object.fromEntries(
    Object.entries(OF_START).flatMap(([path, key]) => (given[path] === undefined ? [] : [[key, given[path]]])),
  )
  return edited(startText(start), editsOf(given))
}

function editsOf(given: Given): readonly Edit[] {
  const full = given['brief.seats'] !== undefined && given['brief.luggage'] !== undefined
  return [
    ...MAPS.filter(at => within(given, at) || (at === 'brief.loads' && full)).map(path => ({ path, now: null })),
    ...Object.entries(KINDS).flatMap(([at, { kind, to }]) =>
      within(given, at) ? rows(at, { kind, ...(to && within(given, to[2]) ? { [to[0]]: to[1] } : {}) }) : [],
    ),
    ...(within(given, TRIP) ? rows(TRIP, { kind: isSteady(given) ? 'steady' : 'cycle', ...usualLoad(given) }) : []),
    ...rows('brief.conditions', usualLoad(given)),
    // The seats and the luggage wanted, all at once.
    ...(full ? rows('brief.loads.full', { people: given['brief.seats'] as string, luggage: given['brief.luggage'] as string }) : []),
    ...Object.entries(given).flatMap(([path, now]) => (OF_START[path] ? [] : [{ path, now }])),
  ]
}
const isSteady = (given: Given): boolean => given[`${TRIP}.speed`] !== undefined || given[`${TRIP}.slope`] !== undefined
const usualLoad = (given: Given): Readonly<Record<string, string>> => (within(given, 'brief.loads.usual') ? { load: 'usual' } : {})
const rows = (at: string, fields: Readonly<Record<string, string>>): readonly Edit[] =>
  Object.entries(fields).map(([key, now]) => ({ path: `${at}.${key}`, now }))
