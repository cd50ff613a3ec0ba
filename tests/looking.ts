import { type Conversion, formatIssue, isUsable, readConversion } from '@ampwright/conversion'
import { Answers, type Assessment, assess } from '@ampwright/engine'
import { conversionOf, lookUps } from './cars.ts'
import { surveyed } from './surveyed.ts'

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
    const surveys = surveyed(read.model),
      conversion = surveys ? { ...read, model: { ...read.model, surveys } } : read
    this.answers.next(conversion.model)
    for (const steps = assess(this.answers, { bands: false }); ; ) {
      const step = steps.next()
      if (step.done) return { conversion, assessment: step.value, answers: this.answers }
    }
  }
}
