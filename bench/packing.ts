// Container problems at ten seconds each beside the published means, and the made bays at up to a minute each. Needs the open problem files (see
// tests/container-problems.ts). `npm run bench:packing -- --problems 2 --seconds 10 --support full,none --bays`
import { type ContainerAnswer, packBay, packContainer, type Support } from '../packages/engine/src/index.ts'
import { type ContainerProblem, containerProblems } from '../tests/container-problems.ts'
import { MADE_BAYS } from '../tests/made-bays.ts'

const SEED = 1
const option = (name: string, otherwise: string): string => {
  const i = process.argv.indexOf(`--${name}`)
  return i < 0 ? otherwise : (process.argv[i + 1] ?? otherwise)
}
const problems = Number(option('problems', '10')),
  seconds = Number(option('seconds', '10')),
  supports = option('support', 'full,none').split(',') as Support[],
  bays = process.argv.includes('--bays')

/** Mean part filled, per cent, over the hundred problems of each set (from memory); the later ones took minutes a problem. */
const PUBLISHED: readonly (readonly [method: string, support: Support, ...sets: number[]])[] = [
  ['heuristic, 1995', 'full', 83.79, 84.44, 83.94, 83.71, 83.8, 82.44, 82.01],
  ['hybrid genetic, 2001', 'full', 87.81, 89.4, 90.48, 90.63, 90.73, 90.72, 90.65],
  ['parallel genetic, 2002', 'full', 88.1, 89.56, 90.77, 91.03, 91.23, 91.28, 91.04],
  ['randomised greedy, 2005', 'full', 89.07, 90.43, 90.86, 90.42, 89.57, 89.71, 88.05],
  ['rotated layers, 2006', 'full', 89.39, 90.26, 91.08, 90.9, 91.05, 90.7, 90.44],
  ['tree search of blocks, 2010', 'full', 94.51, 94.73, 94.74, 94.41, 94.13, 93.85, 93.2],
  ['random keys, 2012', 'full', 94.34, 94.88, 95.05, 94.75, 94.58, 94.38, 93.74],
  ['parallel tabu, 2003', 'none', 93.52, 93.77, 93.58, 93.05, 92.34, 91.72, 90.55],
  ['maximal spaces, 2008', 'none', 93.85, 94.22, 94.25, 94.09, 93.87, 93.52, 92.94],
  ['tree search of blocks, 2010', 'none', 95.05, 95.43, 95.47, 95.18, 95.0, 94.79, 94.24],
  ['random keys, 2012', 'none', 95.28, 95.9, 96.13, 96.01, 95.84, 95.72, 95.29],
]

/** Seconds of processor time so far: what else the machine does does not count. */
const clock = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1e6
}

function filled({ space, kinds }: ContainerProblem, support: Support): ContainerAnswer {
  const until = clock() + seconds
  let last: ContainerAnswer | undefined
  for (const answer of packContainer(space, kinds, { seed: SEED, support })) {
    last = answer
    if (clock() > until) break
  }
  return last as ContainerAnswer
}

const row = (name: string, values: readonly number[]): string => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length
  return `${name.padEnd(34)}${[...values, mean].map(v => v.toFixed(2).padStart(7)).join('')}`
}

for (const support of supports) {
  const ours: number[] = [],
    bounds: number[] = []
  for (const set of [1, 2, 3, 4, 5, 6, 7]) {
    const list = containerProblems(set)?.slice(0, problems) ?? []
    if (list.length === 0) continue
    const answers = list.map(p => ({ answer: filled(p, support), all: p.space[0] * p.space[1] * p.space[2] })),
      mean = (of: (a: ContainerAnswer) => number): number =>
        answers.reduce((sum, { answer, all }) => sum + of(answer) / all, 0) / answers.length
    ours.push(100 * mean(a => a.volume))
    bounds.push(100 * mean(a => a.bound))
    console.error(`BR${set}, ${support} support: ${(ours.at(-1) as number).toFixed(2)} %`)
  }
  if (ours.length === 0) process.exit(2)
  console.log(`\nPart of the container filled, per cent; ${support === 'full' ? 'full support required' : 'support not required'}`)
  console.log(`${''.padEnd(34)}${['BR1', 'BR2', 'BR3', 'BR4', 'BR5', 'BR6', 'BR7', 'mean'].map(s => s.padStart(7)).join('')}`)
  console.log(row(`here: first ${problems} odd, ${seconds} s, seed ${SEED}`, ours))
  console.log(row('no arrangement passes (same)', bounds))
  for (const [method, rule, ...sets] of PUBLISHED) if (rule === support) console.log(row(`published: ${method}`, sets))
}

if (bays) {
  console.log('\nMade bays, best number known by construction')
  for (const { make } of MADE_BAYS) {
    const { name, field, module, best } = make(),
      start = clock()
    let found = 0,
      at = 0,
      bound = 0
    for (const answer of packBay(field, module, { seed: SEED })) {
      if (answer.placed.length > found) at = clock() - start
      found = answer.placed.length
      bound = answer.bound
      if (clock() - start > 60) break
    }
    console.log(`${name.padEnd(24)} known ${best}, found ${found} after ${at.toFixed(1)} s, bound ${bound}`)
  }
}
