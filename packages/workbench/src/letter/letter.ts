import type { Conversion, System } from '@ampwright/conversion'
import type { Assessment } from '@ampwright/engine'
import { beforeAndAfter, riskBeforeAndAfter } from './before-after.ts'
import { fact, isOpen, type LetterPart, type Matter, open, type Pieces, quoted, text } from './pieces.ts'
import { questionsToInspector, questionsToInsurer } from './questions.ts'
import { ruleRows } from './rule-rows.ts'
import { battery, charging, donorCar, putIn, takenOut } from './the-car.ts'

/** Who is asked before the first part is bought. */
export type Recipient = 'inspector' | 'insurer'
/** The letter as data: parts of lines, lines of words, values by name and what is not known yet. Day and names are for the person to write. */
export type Letter = { readonly to: Recipient; readonly subject: Pieces; readonly parts: readonly LetterPart[] }

/**
 * The enquiry to inspector or insurer, the first hold point of the job: what the car was and is to be, by the figures and facts of its assessment.
 * Every number is one of those, in the reader's units; what is not known is said to be open. It asks; it calls nothing permitted.
 */
export function enquiryLetter(a: Assessment, c: Conversion, to: Recipient, system: System = 'metric'): Letter {
  const k: Matter = { a, m: c.model, system },
    car = fact(k, c.model.car)
  return {
    to,
    subject: ['Enquiry before a conversion to battery-electric drive: ', isOpen(car) ? 'a car without a name yet' : car],
    parts: [opening(to), ...(to === 'inspector' ? forInspector(k) : forInsurer(k)), CAUTION],
  }
}

const forInspector = (k: Matter): readonly LetterPart[] => [
  donorCar(k),
  takenOut(k),
  putIn(k),
  beforeAndAfter(k),
  battery(k),
  ruleRows(k),
  questionsToInspector(k),
]
const forInsurer = (k: Matter): readonly LetterPart[] => [
  donorCar(k),
  takenOut(k),
  putIn(k),
  riskBeforeAndAfter(k),
  VALUE,
  battery(k),
  charging(k),
  ruleRows(k, true),
  questionsToInsurer(),
]

/** No file states what a car is worth: that is for the person to write. */
const VALUE: LetterPart = {
  heading: 'What it is worth',
  lines: [open({ open: 'value of the donor car as it stands' }), open({ open: 'value the finished car is to be insured for' })],
}

const opening = (to: Recipient): LetterPart => ({
  heading: 'What is asked',
  lines: [
    text('I plan to take the engine out of the car described below and make it a battery-electric one.'),
    to === 'inspector'
      ? text(
          'Before the first part is bought I ask whether it can be done as planned, and on which conditions. I ask for your answer in writing.',
        )
      : text(
          'Before the first part is bought I ask on what terms you insure it, during the work and after it. I ask for your answer in writing.',
        ),
    text('All numbers are those of the plan as it stands. Where ± stands, the true value should lie within it nineteen times in twenty.'),
  ],
})

const CAUTION: LetterPart = {
  heading: 'What this letter is not',
  lines: [
    {
      is: 'caution',
      pieces: [
        quoted('Ampwright'),
        ', which laid out this letter, informs; it does not approve. The numbers are worked out for a plan and replace neither an examination nor a measurement on the finished car.',
      ],
    },
    {
      is: 'caution',
      pieces: [
        'High voltage kills, stored energy burns, lifted cars fall. Work on high voltage is left to those qualified for it, on parts proven dead.',
      ],
    },
    text('No part is bought before your answer is there. It is kept with the papers of the car.'),
  ],
}
