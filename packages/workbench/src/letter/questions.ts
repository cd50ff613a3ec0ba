import type { Finding } from '@ampwright/engine'
import { type Counted, countedAs } from '../counted.ts'
import { valueCalled } from './called.ts'
import { type LetterLine, type LetterPart, type Matter, open, type Pieces, piecesOf, question, quoted } from './pieces.ts'
import { heldNotToApply, rowWords } from './rule-rows.ts'

/** The letter itself answers this one. */
const THE_LETTER = 'asked-before'
/** What whoever signs looks at: rows of the rule set, and what of the donor car can hurt people. */
const concerns = (f: Finding): boolean =>
  f.rule !== THE_LETTER && ((f.stage === 'brief' && f.requirement !== undefined) || (f.stage === 'donor' && f.harm === 'S3'))

/** What a person set aside is put to the reader as well: whether it is so is for them to judge. */
const OPEN: readonly Counted[] = ['failing', 'marginal', 'unanswered', 'said not to apply']

/** What is open, put as questions: first what the plan does not hold or cannot tell, then what is always asked. */
export function questionsToInspector(k: Matter): LetterPart {
  const found = k.a.findings.filter(f => concerns(f) && OPEN.includes(countedAs(f)))
  return { heading: 'Questions', lines: [...found.flatMap(f => asked(f, k)), ...ALWAYS_INSPECTOR.map(q => question(q))] }
}

export const questionsToInsurer = (): LetterPart => ({ heading: 'Questions', lines: ALWAYS_INSURER.map(q => question(q)) })

const ALWAYS_INSPECTOR = [
  'Do the rules named above hold for this car, in which state of their text, and is there anything they leave out?',
  'Which power, which torque and which mass do you hold against those of the donor car?',
  'Which papers, calculations and tests do you ask for, and at which steps of the work do you want to see the car?',
  'Who may do the work on the high-voltage system, and what do you want to see of it?',
  'Do you agree to the plan as described, or on which conditions?',
]
const ALWAYS_INSURER = [
  'Is the car insured while it is being converted: standing, on a trailer, and on the way to the inspection?',
  'On what terms do you insure the finished car, and which of the changes above move them?',
  'Does it matter to you whether the battery modules are new or used, and who did the work?',
  'Is charging where it is planned covered, the building included?',
  'Which papers do you want before the work, and which after it?',
]

function asked(f: Finding, k: Matter): readonly LetterLine[] {
  const title: Pieces = [quoted(f.title), ...(f.item === undefined ? [] : [' (', quoted(f.item), ')']), '. ']
  if (f.byHand) return [question(...title, 'It is ', ...heldNotToApply(f.byHand), '. Do you see it so too?')]
  if (f.outcome === 'failing' || f.outcome === 'marginal') return [question(...title, ...saysOf(f, k), ...closing(f))]
  // What only this office can answer is a question to it; what the plan has not measured or decided yet is open.
  const theirs = f.gaps.every(g => g.path.startsWith('brief.demands.'))
  if (theirs && f.assumed.length === 0)
    return [question(...(rowWords(f, k) ?? [...title, ...saysOf(f, k)]), ' Does it concern this car, and can it be met?')]
  return [...f.gaps, ...f.assumed.map(path => ({ label: `${valueCalled(path)}, assumed so far`, path }))].map(g =>
    open({ open: `${g.label} (for: ${f.title})`, path: g.path }),
  )
}

const saysOf = (f: Finding, k: Matter): Pieces =>
  piecesOf(f.says, { ...f.slots, ...(f.found ? { found: f.found } : {}), ...(f.required ? { limit: f.required.limit } : {}) }, f.item, k)

function closing(f: Finding): Pieces {
  if (f.outcome === 'failing') return [' As planned this does not hold. What do you ask for?']
  if (f.reason === undefined) return [' The limit lies within the ±. What do you ask for?']
  return [` It is marginal because ${f.reason}. How do you read it?`]
}
