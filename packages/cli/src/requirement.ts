import { type Limit, type Reading, rowSource, ruleSet } from '@ampwright/engine'

const READ: Readonly<Record<Reading, string>> = {
  T: 'official text read',
  S: 'page of the authority read',
  D: 'digest of the text read',
  Q: 'quoted by others: open the text before relying on it',
  'from memory': 'from memory: open the text before relying on it',
  'common practice': 'common practice, no law',
}

/** Where a limit of a rule set comes from and how well its text was read. */
export function requirementLine(limit: Limit): string {
  const { requirement: r, from, onlyWhen } = limit
  const key = r.variant === undefined ? r.key : `${r.key}@${r.variant}`
  const what = [r.for === undefined ? '' : `for: ${r.for}`, onlyWhen === undefined ? '' : `only for: ${onlyWhen}`]
    .filter(Boolean)
    .join('; ')
  return `${ruleSet(from)?.name ?? from}, ${key}: ${rowSource(limit)} (${READ[r.read]})${what ? `; ${what}` : ''}`
}
