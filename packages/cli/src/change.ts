import { renameSync, rmSync, writeFileSync } from 'node:fs'
import {
  applyEdits,
  type Edit,
  formatIssue,
  nearest,
  pathKeys,
  pathText,
  type System,
  settingText,
  type TextNode,
} from '@ampwright/conversion'
import type { Assessment, Finding, Remedy } from '@ampwright/engine'
import { printComparison } from './compare.ts'
import { assessWithProgress } from './judged.ts'
import { bytesOf, loadText, Refusal } from './load.ts'
import type { Terminal } from './terminal.ts'

/** `PATH=VALUE` as an edit; nothing behind the sign removes what is there. */
export function editOf(text: string): Edit {
  const at = text.indexOf('=')
  if (at < 1) throw new Refusal(`set: found «${text}»; PATH=VALUE is wanted, such as drive.units.main.gear=third, or PATH= to remove`)
  const now = text.slice(at + 1).trim()
  return { path: text.slice(0, at).trim(), now: now === '' ? null : now }
}

/** The edits a remedy stands for. */
export const remedyEdits = (r: Remedy & { do: 'set' }): readonly Edit[] => r.sets.map(s => ({ path: s.path, now: settingText(s.to) }))

/**
 * Tries edits on a conversion: both states are assessed in full and compared. Only with `write` is the file replaced, whole or not at all.
 * Gives the assessment after the edits.
 */
export function change(
  file: string,
  edits: readonly Edit[],
  o: { write: boolean; strict: boolean; units: System },
  t: Terminal,
): Assessment {
  if (o.write && file === '-') throw new Refusal('set: standard input cannot be written to; leave out --write')
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytesOf(file)),
    before = loadText(text, file, o.strict)
  const applied = applyEdits(text, edits)
  if (!applied.ok) throw new Refusal(`${formatIssue({ ...applied.problem, file })}\nNothing was changed.`)
  const after = loadText(applied.text, file, o.strict),
    a = assessWithProgress(before, t),
    b = assessWithProgress(after, t)
  printComparison(a, b, ['before', 'after'], t, o.units)
  if (!o.write) {
    t.out('')
    t.out('Tried only; the file is as it was. Add --write to keep it.')
    return b
  }
  const beside = `${file}.writing`
  try {
    writeFileSync(beside, applied.text, { flag: 'wx' })
    renameSync(beside, file)
  } catch (e) {
    rmSync(beside, { force: true })
    throw new Refusal(`set: ${file} cannot be written (${(e as NodeJS.ErrnoException).code ?? 'unknown reason'}); it is as it was`)
  }
  t.out('')
  t.out(
    `Written. To undo: ampwright set ${file} ${undo(text, edits)
      .map(e => `'${e}'`)
      .join(' ')} --write`,
  )
  return b
}

function undo(text: string, edits: readonly Edit[]): readonly string[] {
  const { tree } = loadText(text, '', false).text
  return edits.map(({ path }) => {
    let node: TextNode | undefined = tree
    for (const key of pathKeys(path) ?? []) node = node?.kind === 'group' ? node.entries.get(key)?.node : undefined
    return `${typeof path === 'string' ? path : pathText(path)}=${node?.kind === 'value' ? node.source : ''}`
  })
}

/** A finding by `RULE` or `RULE@ITEM`; names the ones there are when it is not among them. */
export function findingNamed(a: Assessment, name: string): Finding {
  const id = (f: Finding): string => (f.item === undefined ? f.rule : `${f.rule}@${f.item}`)
  const found = a.findings.find(f => id(f) === name) ?? a.findings.find(f => f.rule === name)
  if (found) return found
  const near = nearest(
    name,
    a.findings.flatMap(f => [f.rule, id(f)]),
  )
  throw new Refusal(`no finding is called «${name}»${near ? `; did you mean ${near}?` : ''}`)
}

export type Accepting = { readonly by: string; readonly reason: string; readonly scope: string; readonly date: string }
/** The edit that accepts a finding. What rests on nothing, and what holds anyway, cannot be accepted. */
export function acceptance(f: Finding, given: Accepting): Edit {
  if (f.outcome !== 'failing' && f.outcome !== 'marginal')
    throw new Refusal(`accept: ${f.rule} is ${f.outcome}; only what is failing or marginal can be accepted`)
  if (!/^\d{4}-\d{2}-\d{2}$/.test(given.date))
    throw new Refusal(`accept: --date: found «${given.date}»; a date such as 2026-11-25 is wanted`)
  const key = f.item === undefined ? f.rule : `${f.rule}@${f.item}`
  return { path: ['accepted', key], now: { by: given.by, reason: given.reason, scope: given.scope, date: given.date, rests: f.rests } }
}
