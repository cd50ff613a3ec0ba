import { type Limit, type Reading, rowSource, ruleSet, type Table } from '@ampwright/engine'
import { headed } from './shown.ts'

/** How well a text was read, in words. */
export const READ: Readonly<Record<Reading, string>> = {
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

/** How a row is used, in words. */
export const USED: Readonly<Record<string, string>> = {
  max: 'at most this much',
  min: 'at least this much',
  range: 'between these',
  must: 'asked for',
  'must-not': 'not allowed',
  trigger: 'from here on a further approval starts',
  who: 'who does or signs it',
  paper: 'a document that has to be there',
  list: 'points to look at or write down',
  fact: 'to be known; nothing is compared',
}

/** The rows of a rule set as a reader wants them: headed by what they ask, codes in words, the name of the row last. */
export function readable(table: Table): Table {
  if (table.id !== 'brief.requirements') return table
  return {
    ...table,
    columns: [...table.columns.filter(c => c.key !== 'asks'), { key: 'row', label: 'row of the rule set' }],
    rows: table.rows.map(({ name, cells }) => {
      const { asks, test, read, from, unit, value, ...rest } = cells as Readonly<Record<string, string | undefined>>,
        told = value === 'yes' && (test === 'must' || test === 'must-not') ? undefined : value
      return {
        name: headed(asks ?? name),
        cells: {
          ...rest,
          test: USED[test ?? ''] ?? test,
          value: told,
          unit: unit === '1' ? undefined : unit,
          read: READ[read as Reading] ?? read,
          from: ruleSet(from ?? '')?.name ?? from,
          row: name,
        },
      }
    }),
  }
}
