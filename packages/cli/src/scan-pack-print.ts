import type { System } from '@ampwright/conversion'
import { nearestOf, type ScanPack } from '@ampwright/geometry'
import { aboutGap, count, many, place, type Row, type Says, saysIn } from './scan-print.ts'
import { plain } from '@ampwright/workbench'
import { colours, columns, type Terminal } from './terminal.ts'

/** How long it took [s] and the most memory it held [B]. */
type Effort = { readonly seconds: number; readonly peakMemory: number }
/** How long this process has run [s], and the most memory it held [B]. */
export const effort = (): Effort => ({ seconds: performance.now() / 1000, peakMemory: 1024 * process.resourceUsage().maxRSS })

/** Modules that are told one by one. */
const LISTED = 12
const BY: Readonly<Record<ScanPack['answer']['boundBy'], string>> = {
  volume: 'by volume',
  planes: 'by the layers it can be cut into',
  points: 'by the places each must cover',
  'searched through': 'by trying every arrangement',
}

/** Modules in the free space, for people: how many, how many could be, where they stand, how near they come. */
export function printPack(pack: ScanPack, t: Terminal, system: System): void {
  const says = saysIn(system),
    { answer } = pack,
    nearest = nearestOf(pack)
  t.out('')
  t.out(colours(t).bold('Modules'))
  const rows: readonly Row[] = [
    [
      'Placed',
      `${count(answer.placed.length)} of at most ${count(answer.bound)}, ${BY[answer.boundBy]}${answer.gap === 0 ? ': proven best' : ''}`,
    ],
    ['Searched', `${many(answer.steps, 'step')} with seed ${answer.seed}`],
    ...(nearest
      ? [
          ['Held against', `every triangle of the scan: ${touching(pack)}`] as Row,
          ['Nearest', `module ${nearest.at + 1}: ${aboutGap(nearest.gap, says)}`] as Row,
        ]
      : []),
    ...answer.placed
      .slice(0, LISTED)
      .map(({ box, down }, i): Row => [`Module ${i + 1}`, `on its ${down}, ${corners(box.low, box.high, says)}`]),
    ...(answer.placed.length > LISTED ? [['And', `${count(answer.placed.length - LISTED)} more: --json tells them all`] as Row] : []),
  ]
  for (const line of columns(rows, t.width, 2)) t.out(line)
}

function touching({ gaps }: ScanPack): string {
  const n = gaps.filter(g => g.overlap).length
  return n === 0 ? 'none touches it' : `▲ ${many(n, 'module runs', 'modules run')} into it`
}

const corners = (low: readonly [number, number, number], high: readonly [number, number, number], says: Says): string =>
  `from ${place(low, says)} to ${place(high, says)}`

export function printEffort({ seconds, peakMemory }: Effort, t: Terminal): void {
  t.out('')
  t.out(colours(t).dim(`${plain(seconds, 2)} s, at most ${Math.round(peakMemory / 1e6)} MB of memory`))
}

/** Metres; of each module its box, the face it lies on and its gap to the scan. */
export const packJson = ({ answer, gaps }: ScanPack): object => ({
  placed: answer.placed.map(({ box, down }, i) => ({ ...box, down, gap: gaps[i] })),
  bound: answer.bound,
  boundBy: answer.boundBy,
  seed: answer.seed,
  steps: answer.steps,
})
