import { type Conversion, formatIssue } from '@ampwright/conversion'
import { Answers, type Assessment, assess, type Progress, STUDIES } from '@ampwright/engine'
import type { Terminal } from './terminal.ts'

/** What was worked out of a conversion, to serve the look at it after an edit. */
export type Looked = { readonly answers: Answers; readonly assessment: Assessment }
/** Assesses a conversion that is about to be edited. */
export function look(c: Conversion, t: Terminal, { notes = true } = {}): Looked {
  const answers = new Answers(c.model)
  return { answers, assessment: assessWithProgress(c, t, { notes, answers }) }
}

/** Assesses a conversion; on a terminal it says what it is at when that takes over a second. What is noted about the file goes to standard error. */
export function assessWithProgress(
  c: Conversion,
  t: Terminal,
  { notes = true, answers = new Answers(c.model) }: { notes?: boolean; answers?: Answers } = {},
): Assessment {
  if (notes) for (const issue of c.issues) t.err(formatIssue(issue))
  if (notes && c.text.text?.trim() === '') t.err('The conversion file is empty: everything is asked.')
  const steps = assess(answers),
    began = Date.now()
  for (let shown = 0; ; ) {
    const step = steps.next()
    if (step.done) {
      if (shown) process.stderr.write('\r\u001b[K')
      return step.value
    }
    if (process.stderr.isTTY && Date.now() - began > 1000 && Date.now() - shown > 100) {
      shown = Date.now()
      process.stderr.write(`\r\u001b[K${doing(step.value).slice(0, t.width - 1)}`)
    }
  }
}

const SAYS: Readonly<Record<Progress['of'], string>> = { study: 'Working out', bands: 'How sure that is', rules: 'Judging' }
/** What is being done, as the question it answers. */
const doing = ({ did, of }: Progress): string => {
  const asks = STUDIES.find(s => s.id === did.replace(/\..*/, ''))?.asks
  return `${SAYS[of]}${asks ? `: ${asks}` : ' …'}`
}
