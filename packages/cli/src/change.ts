import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { applyEdits, type Conversion, type Edit, formatIssue, isGroupAt, nearest, readText, type System } from '@ampwright/conversion'
import { type Assessment, type Finding, findingId } from '@ampwright/engine'
import { comparisonJson, freed, pathOf, Refusal, undo, unknownParts } from '@ampwright/workbench'
import { printComparison } from './compare.ts'
import { assessWithProgress, type Looked, look } from './judged.ts'
import { bytesOf, loadText } from './load.ts'
import type { Terminal } from './terminal.ts'

/** `PATH=VALUE` as an edit; nothing behind the sign removes what is there, braces give a whole group as the file does. */
export function editOf(text: string): Edit {
  const at = text.indexOf('=')
  if (at < 1) throw new Refusal(`set: found «${text}»; PATH=VALUE is wanted, such as drive.units.main.gear=third, or PATH= to remove`)
  const path = text.slice(0, at).trim(),
    now = text.slice(at + 1).trim()
  return { path, now: now === '' ? null : now.startsWith('{') && isGroupAt(path) ? groupOf(path, now) : now }
}

function groupOf(path: string, text: string): Readonly<Record<string, string>> {
  const reading = readText(`group: ${text}\n`),
    node = reading.tree?.entries.get('group')?.node,
    fault = reading.issues[0]
  if (fault || node?.kind !== 'group')
    throw new Refusal(`set: ${path}: ${fault?.what ?? 'no group'}; found «${text}»; accepted { key: value, key: value } in one line`)
  return Object.fromEntries(
    [...node.entries].map(([key, { node: value }]) => {
      if (value.kind !== 'value')
        throw new Refusal(`set: ${path}.${key}: a group within the braces; give it by itself, as '${path}.${key}={ … }'`)
      return [key, value.source]
    }),
  )
}

/** How a change is made and told: the command that asks for it, whether the file is replaced, and what is printed. */
export type Changing = {
  readonly command:
    | 'set'
    | 'remedy'
    | 'modules'
    | 'accept'
    | 'does-not-apply'
    | 'take-back'
    | 'coast-down'
    | 'concepts'
    | 'arrange'
    | 'circuit'
  readonly write?: boolean
  readonly strict?: boolean
  readonly json?: boolean
  readonly figures?: boolean
  readonly units: System
  /** The finding it is about. */
  readonly finding?: Finding
  /** The file as it stands, where it was assessed already. */
  readonly looked?: Looked
}

/**
 * Tries edits on a conversion: both states are assessed in full and compared. Only with `write` is the file replaced, whole or not at all.
 * Gives the assessment after the edits.
 */
export function change(file: string, edits: readonly Edit[], o: Changing, t: Terminal): Assessment {
  if (o.write && file === '-') throw new Refusal(`${o.command}: standard input cannot be written to; leave out --write`)
  const strict = Boolean(o.strict),
    text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytesOf(file)),
    before = loadText(text, file, strict)
  const applied = applyEdits(text, edits)
  if (!applied.ok) throw new Refusal(`${formatIssue({ ...applied.problem, file })}\nNothing was changed.`)
  const after = changedText(before, applied.text, edits, file, strict)
  refuseUnknownParts(edits, after, file)
  const { answers, assessment: a } = o.looked ?? look(before, t, { notes: false })
  answers.next(after.model)
  const b = assessWithProgress(after, t, { answers })
  if (!o.json) printComparison(a, b, ['before', 'after'], t, o.units, Boolean(o.figures))
  if (o.write) replace(file, applied.text, o.command)
  const back = undo(text, edits)
  if (o.json) {
    const told = {
      command: o.command,
      ...(o.finding ? { finding: findingId(o.finding) } : {}),
      written: Boolean(o.write),
      edits: edits.map(e => ({ path: pathOf(e.path), now: e.now })),
      undo: back,
      ...comparisonJson(a, b),
    }
    t.out(JSON.stringify(told, null, 2))
    return b
  }
  t.out('')
  if (edits.length === 0) t.out('Everything in it stands in the file already: nothing to change.')
  else
    t.out(
      o.write
        ? `Written. To undo: ampwright set ${file} ${back.map(e => `'${e.path}=${e.now ?? ''}'`).join(' ')} --write`
        : 'Tried only; the file is as it was. Add --write to keep it.',
    )
  return b
}

/** The text as it would be; where it cannot be because shapes name what goes, the refusal says how both go. */
function changedText(before: Conversion, text: string, edits: readonly Edit[], file: string, strict: boolean): Conversion {
  try {
    return loadText(text, file, strict, 'nothing was changed')
  } catch (e) {
    const along = freed(before, edits)
    if (!(e instanceof Refusal) || along.length === 0) throw e
    const all = [...along, ...edits].map(({ path, now }) => `'${pathOf(path)}=${now === null ? '' : now}'`)
    throw new Refusal(`${e.message}\nTo take it out with what stands for it: ampwright set ${file} ${all.join(' ')}`)
  }
}

function refuseUnknownParts(edits: readonly Edit[], after: Conversion, file: string): void {
  const unknown = unknownParts(edits, after.issues)
  if (unknown.length) throw new Refusal(`${unknown.map(i => formatIssue({ ...i, file })).join('\n')}\nNothing was changed.`)
}

function replace(file: string, text: string, command: string): void {
  const beside = `${file}.writing`
  try {
    writeFileSync(beside, text, { flag: 'wx' })
    renameSync(beside, file)
  } catch (e) {
    rmSync(beside, { force: true })
    throw new Refusal(`${command}: ${file} cannot be written (${(e as NodeJS.ErrnoException).code ?? 'unknown reason'}); it is as it was`)
  }
}

/** A finding by `RULE` or `RULE@ITEM`; names the ones there are when it is not among them. */
export function findingNamed(a: Assessment, name: string, command: string): Finding {
  const found = a.findings.find(f => findingId(f) === name) ?? a.findings.find(f => f.rule === name)
  if (found) return found
  const near = nearest(
    name,
    a.findings.flatMap(f => [f.rule, findingId(f)]),
  )
  throw new Refusal(`${command}: no finding is called «${name}»${near ? `; did you mean ${near}?` : ''}`)
}
