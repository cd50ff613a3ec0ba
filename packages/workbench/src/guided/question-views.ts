import { fieldAt } from '@ampwright/conversion'
import { ruleSet } from '@ampwright/engine'
import { headed } from '../shown.ts'
import { type AnswerProblem, answerProblems, kindAsked } from './conversion-text.ts'
import { hint } from './hint.ts'
import { type Chapter, type Given, type Question, questionsFor } from './questions.ts'

/** One answer of the guided start as a screen shows it. */
export type QuestionField = {
  readonly path: string
  readonly label: string
  readonly oneOf?: readonly { readonly word: string; readonly label: string }[]
  readonly offer?: string
  /** How an answer is typed, unit and all. */
  readonly hint?: string
  readonly text: string
  readonly problem?: AnswerProblem
}
export type QuestionView = {
  readonly id: string
  readonly chapter: Chapter
  readonly asks: string
  readonly help?: string
  /** What is so while it stays open, as a sentence. */
  readonly open?: string
  readonly fields: readonly QuestionField[]
}

/** The questions that concern this car, with what was answered and what is wrong with it. */
export function questionViews(given: Given): readonly QuestionView[] {
  const problems = new Map(answerProblems(given).map(p => [p.path, p]))
  return questionsFor(given).map(q => ({
    id: q.id,
    chapter: q.chapter,
    asks: q.asks,
    ...(q.help === undefined ? {} : { help: q.help }),
    ...leftOpen(q),
    fields: q.paths.map((path, i) => {
      const leaf = fieldAt(path, kindAsked),
        words = q.choices?.(given) ?? (leaf?.is === 'choice' ? leaf.oneOf : undefined),
        problem = problems.get(path),
        offer = q.offers?.[path],
        such = hint(path)
      return {
        path,
        label: q.called?.[i] ?? headed(leaf?.label ?? path),
        text: given[path] ?? '',
        ...(words ? { oneOf: words.map(labelled) } : {}),
        ...(offer === undefined ? {} : { offer }),
        ...(such === undefined ? {} : { hint: such }),
        ...(problem === undefined ? {} : { problem }),
      }
    }),
  }))
}
const leftOpen = ({ left, open }: Question): Pick<QuestionView, 'open'> =>
  left !== undefined ? { open: left } : open !== undefined ? { open: `Left open, this stays unanswered: ${open}.` } : {}

/** A rule set is named by a code in the file; people know it by its name. */
const labelled = (word: string): { readonly word: string; readonly label: string } => ({ word, label: ruleSet(word)?.name ?? word })
