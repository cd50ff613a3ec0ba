import { type Finding, isGap, ruleSet, type Table } from '@ampwright/engine'
import { READ, readable, USED } from '../requirement.ts'
import { type LetterLine, type LetterPart, type Matter, open, type Pieces, quoted, text, valueSaid } from './pieces.ts'

/** Rows that say who decides, whom to ask and which way is open: what an insurer wants of a rule set. */
const WHO = /^(route|ask|sign)\./

/** The rule set by its name, with its rows that decide whether the plan can be done, each with how the plan stands to it. */
export function ruleRows(k: Matter, whoOnly = false): LetterPart {
  const { rules } = k.m.brief,
    heading = 'The rules it is planned by'
  if (isGap(rules)) return { heading, lines: [open({ open: 'rule set the approval goes by', path: rules.path })] }
  const table = k.a.tables.get('brief.requirements'),
    rows = (table ? readable(table).rows : []).filter(r => !whoOnly || WHO.test(cellOf(r, 'row')))
  return {
    heading,
    lines: [
      text(
        'Rule set: ',
        quoted(ruleSet(rules.value)?.name ?? rules.value),
        '. Rows follow as they were read, each with its source; correct me where I read wrong or where something else holds.',
      ),
      ...rows.map(r => ruleLine(r, k)),
    ],
  }
}

type RuleRow = Table['rows'][number]
const cellOf = ({ cells }: RuleRow, key: string): string => (cells[key] === undefined ? '' : String(cells[key]))

function ruleLine(r: RuleRow, k: Matter): LetterLine {
  return {
    is: 'rule',
    asks: quoted(r.name),
    says: quoted(saysOf(r)),
    source: quoted(sourceOf(r)),
    stands: k.a.findings.filter(f => isOf(f, cellOf(r, 'row'))).map(f => standing(f, k)),
  }
}

/** Uses that tell nothing beyond the value itself. */
const PLAIN_USES: readonly (string | undefined)[] = ['max', 'min', 'range', 'fact'].map(test => USED[test])

function saysOf(r: RuleRow): string {
  const withUnit = (n: string): string => `${n}${cellOf(r, 'unit') ? ` ${cellOf(r, 'unit')}` : ''}`,
    [low, high] = [cellOf(r, 'low'), cellOf(r, 'high')]
  return [
    PLAIN_USES.includes(cellOf(r, 'test')) ? '' : cellOf(r, 'test'),
    cellOf(r, 'value'),
    low && low === high ? withUnit(low) : '',
    low && low !== high ? `at least ${withUnit(low)}` : '',
    high && low !== high ? `at most ${withUnit(high)}` : '',
    cellOf(r, 'for') && `for: ${cellOf(r, 'for')}`,
    cellOf(r, 'onlyWhen') && `only in the case of: ${cellOf(r, 'onlyWhen')}`,
    OUR_SETS.test(cellOf(r, 'remark')) ? '' : cellOf(r, 'remark'),
  ]
    .filter(Boolean)
    .join('; ')
}

/** Remarks that point to another of the program's sets say nothing to whoever has only the letter. */
const OUR_SETS = /\bsets?\b/

const isPractice = (r: RuleRow): boolean => cellOf(r, 'read') === READ['common practice']
const sourceOf = (r: RuleRow): string =>
  isPractice(r)
    ? READ['common practice']
    : `${['from', 'work', 'clause', 'date']
        .map(key => cellOf(r, key))
        .filter(Boolean)
        .join(', ')} (${cellOf(r, 'read')})`

/** What the row a finding is judged by asks and says; undefined where it is no row to answer before the first part. */
export function rowWords(f: Finding, k: Matter): Pieces | undefined {
  const table = k.a.tables.get('brief.requirements'),
    r = table && readable(table).rows.find(x => isOf(f, cellOf(x, 'row')))
  return r && [quoted(r.name), ': ', quoted(saysOf(r)), '.']
}

const isOf = (f: Finding, row: string): boolean => {
  const { requirement } = f
  // What somebody says does not apply is for the reader to judge; what the rule itself leaves out is no matter of this car.
  if (requirement === undefined || (f.outcome === 'does not apply' && !f.byHand)) return false
  const { key, variant } = requirement.requirement
  return (variant === undefined ? key : `${key}@${variant}`) === row
}

const COMPARED = { sound: 'within limit: ', failing: 'beyond the limit: ', marginal: 'the limit lies within the ±: ' } as const
const ANSWERED = { sound: 'as asked', failing: 'not as asked', marginal: 'as asked, in part' } as const

/** How the plan stands to a row, with what was found. */
function standing(f: Finding, k: Matter): Pieces {
  const item: Pieces = f.item === undefined ? [] : [quoted(f.item), ': ']
  if (f.byHand) return [...item, ...heldNotToApply(f.byHand)]
  if (f.outcome === 'unanswered' || f.outcome === 'does not apply') return [...item, 'not known yet']
  if (f.outcome === 'accepted') return [...item, 'taken as it is by whoever is named in the file']
  const eased = easedBy(f)
  if (!f.found) return [...item, ANSWERED[f.outcome], ...eased]
  const limit: Pieces = f.required ? [`, ${f.required.side} `, valueSaid(f.required.limit, k)] : []
  const words = eased.length ? COMPARED[f.doubted ? 'sound' : 'failing'] : COMPARED[f.outcome]
  return [...item, words, valueSaid(f.found, k), ...limit, ...eased]
}

/** Who holds that it does not apply, and why. */
export const heldNotToApply = ({ by, date, because }: NonNullable<Finding['byHand']>): Pieces => [
  'held not to apply, because ',
  quoted(because),
  ' (',
  quoted(`${by}, ${date}`),
  ')',
]

/** Why something counts as marginal though the number alone says otherwise. */
export const easedBy = (f: Finding): Pieces =>
  f.outcome === 'marginal' && f.reason !== undefined ? [`; marginal because ${f.reason}`] : []
