import type { Model } from '../model/model.ts'
import type { Gap } from '../working/value.ts'
import { reuse } from './reuse.ts'
import { type Answered, type Ask, type Gaps, gapsIn, type Kept, known, Making, once, type Study } from './study.ts'

type Record_ = Kept & { readonly reads: unknown; readonly gaps?: readonly Gap[]; readonly open?: Gaps }

/**
 * Answers studies on demand and keeps the answers: a study runs again only when something it read is no longer the same.
 *
 * Throws RangeError when studies ask in a circle, naming the chain: a fault of the program.
 */
export class Answers {
  private model: Model
  private readonly kept = new Map<string, Record_>()
  private readonly turn = new Map<string, unknown>()
  private readonly open: string[] = []
  private readonly answers = new WeakSet<object>()
  /** Studies that ran since the last model, in order: what an edit cost. */
  readonly ran: string[] = []

  constructor(model: Model) {
    this.model = model
  }

  /** Takes the model after an edit; what did not change stays the same object. */
  next(model: Model): void {
    this.model = reuse(this.model, model)
    this.turn.clear()
    this.ran.length = 0
  }

  current = (): Model => this.model

  ask: Ask = <A>(study: Study<A>): Answered<A> | Gaps => {
    if (this.turn.has(study.id)) return this.turn.get(study.id) as Answered<A> | Gaps
    if (this.open.includes(study.id)) throw new RangeError(`studies ask in a circle: ${[...this.open, study.id].join(' → ')}`)
    this.open.push(study.id)
    const read = study.reads(this.model, this.ask)
    this.open.pop()
    const before = this.kept.get(study.id),
      reads = reuse(before?.reads, read, this.answers)
    const record = before && Object.is(before.reads, reads) ? before : this.run(study, reads, before)
    this.kept.set(study.id, record)
    const answer = record.open ?? record.answer
    this.turn.set(study.id, answer)
    return answer as Answered<A> | Gaps
  }

  /** Figures, traces, tables and gaps of a study that was asked. */
  of = (study: Study<unknown>): Kept | undefined => {
    this.ask(study)
    return this.kept.get(study.id)
  }

  private run<A>(study: Study<A>, reads: unknown, before: Record_ | undefined): Record_ {
    this.ran.push(study.id)
    const soft: Gap[] = [],
      gaps = once(gapsIn(reads, this.answers, soft)),
      missing = once([...gaps, ...soft])
    if (gaps.length) return { reads, answer: undefined, figures: [], traces: [], tables: [], gaps, open: { gaps }, missing }
    const make = new Making(study.id),
      fresh = study.answer(known(reads, this.answers) as never, make)
    const all = reuse(before && !before.gaps ? { answer: before.answer, figures: before.figures } : undefined, {
      answer: fresh,
      figures: make.figures,
    })
    if (typeof all.answer === 'object' && all.answer !== null) this.answers.add(all.answer)
    return { reads, answer: all.answer, figures: all.figures, traces: make.traces, tables: make.tables, missing }
  }
}
