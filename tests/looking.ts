import { type Conversion, formatIssue, isUsable, readConversion } from '@ampwright/conversion'
import { Answers, type Assessment } from '@ampwright/engine'
import { conversionOf, lookUps, withSurveys } from './cars.ts'
import { withoutBands } from './with-facts.ts'

type Looked = { readonly conversion: Conversion; readonly assessment: Assessment; readonly answers: Answers }

/** Looks at one edited text after the other as a desk does, each from what the last look left. That it is what a first look gives, sweeps/kept shows. */
export class Looking {
  private readonly answers: Answers
  private reading: Conversion['text']

  constructor(text: string) {
    const { model, text: reading } = conversionOf(text)
    this.answers = new Answers(model)
    this.reading = reading
  }
  private read(text: string): Conversion {
    const read = readConversion(text, { lookUps, before: this.reading })
    this.reading = read.text
    return read
  }
  usable(text: string): boolean {
    return isUsable(this.read(text))
  }
  at(text: string): Looked {
    const read = this.read(text)
    if (!isUsable(read)) throw new Error(read.issues.map(formatIssue).join('\n'))
    const conversion = withSurveys(read)
    this.answers.next(conversion.model)
    return { conversion, assessment: withoutBands(this.answers), answers: this.answers }
  }
}
