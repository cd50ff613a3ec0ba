import { type FileDatum, type Issue, isError, type LookUps, readConversion, readWorkshop } from '@ampwright/conversion'
import type { Judge, Judged, WorkshopJudge } from '@ampwright/store'
import { fileDatum, lookUps, unknownParts } from '@ampwright/workbench'

/** Files read lately, by their hash and format: the same bytes are not read twice. */
const read = new Map<string, FileDatum>()
const MOST = 60

/** The files beside a text as the reader of conversions looks them up. */
const attachments =
  ({ files, bytesOf }: Judged): LookUps['attachments'] =>
  (name, format) => {
    const word = name.normalize('NFC'),
      hash = Object.hasOwn(files, word) ? files[word] : undefined
    if (hash === undefined) return undefined
    const key = `${format}\n${hash}`,
      known = read.get(key) ?? fileDatum(bytesOf(hash), format)
    if (read.size >= MOST) read.clear()
    read.set(key, known)
    return known
  }

const issuesOf = (t: Judged): readonly Issue[] => readConversion(t.text, { lookUps: lookUps(attachments(t)) }).issues
const mark = (i: Issue): string => JSON.stringify([i.path, i.what, i.found])

/**
 * What keeps a batch out: errors the text has after it and had not before, and parts nobody knows that the batch sets. A conversion that is
 * faulty already can so be mended step by step.
 */
export const judge: Judge = (after, before, edits) => {
  const issues = issuesOf(after),
    errors = issues.filter(isError)
  const had = errors.length && before ? new Set(issuesOf(before).filter(isError).map(mark)) : new Set<string>()
  return [...errors.filter(i => !had.has(mark(i))), ...unknownParts(edits, issues)]
}

/** The same for the workshop's own file: its text is sound before every batch, so that any error is the batch's own. */
export const judgeWorkshop: WorkshopJudge = (after, _, edits) => {
  const { issues } = readWorkshop(after, { lookUps: lookUps() })
  return [...issues.filter(isError), ...unknownParts(edits, issues)]
}
