import { type Edit, nearest } from '@ampwright/conversion'
import { coastingRuns, isGap, type Kind, type Model, type SpeedLog, stepTime } from '@ampwright/engine'
import { type NumberColumn, readCsv, type WordColumn } from '@ampwright/exchange'
import { inSi } from './file-datum.ts'
import { Refusal } from './refusal.ts'

const COLUMNS = {
  time: ['time', 't', 'elapsed', 'elapsed time'],
  speed: ['speed', 'v', 'velocity', 'gps speed'],
  heading: ['heading', 'course', 'bearing', 'track'],
  direction: ['direction', 'way'],
} as const
/** Whether a heading names a column of a speed log. */
export const isLogColumn = (what: keyof typeof COLUMNS, heading: string): boolean =>
  (COLUMNS[what] as readonly string[]).includes(
    heading
      .toLowerCase()
      .replace(/[-_\s]+/g, ' ')
      .trim(),
  )
const MOST_PAIRS = 6
const KMH = 1 / 3.6

/** A log by its name and content. */
export type Log = { readonly name: string; readonly bytes: Uint8Array }
type Way = 'out' | 'back'
type Run = SpeedLog & { readonly way: Way; readonly where: string }
type Step = { readonly name: string; readonly from: number; readonly to: number; readonly texts: readonly [from: string, to: string] }
export type LoggedCoastDown = { readonly edits: readonly Edit[]; readonly found: readonly string[] }

/**
 * Logs of coast-downs as the speed steps of a car: the runs in neutral are found in each log, and the times through each step read off. Steps the file
 * has already are kept; without any, steps of 10 km/h as far as all runs go.
 */
export function coastDownEdits(logs: readonly Log[], { donor }: Model): LoggedCoastDown {
  const runs: Run[] = [],
    wayOut: WayOut = {}
  for (const log of logs) runs.push(...runsOf(log, runs.length, wayOut))
  const ways = { out: runs.filter(r => r.way === 'out'), back: runs.filter(r => r.way === 'back') }
  const found = runs.map(r => `${r.where}: ${r.way}, ${kmh(r.speeds[0]!)} to ${kmh(r.speeds.at(-1)!)} km/h`)
  const refused = (why: string): Refusal => new Refusal(`${[...found, `coast-down: ${why}`].join('\n')}\nNothing was taken over.`)
  if (ways.out.length !== ways.back.length || ways.out.length < 2 || ways.out.length > MOST_PAIRS)
    throw refused(
      `${ways.out.length} runs out and ${ways.back.length} back; wanted two to six pairs, as many out as back. Runs count as out and back in turn, unless a column direction says out or back, or a column heading [°] tells them apart`,
    )
  const steps = stepsOf(donor.coastDown.steps, runs)
  if (steps.length < 3) throw refused('all runs together pass fewer than three steps of 10 km/h')
  const edits = steps.map(({ name, from, to, texts }): Edit => {
    const timeOf = (r: Run): string => {
      const t = stepTime(r, from, to)
      if (!(t > 0)) throw refused(`${r.where} does not pass the step from ${texts[0]} to ${texts[1]}`)
      return `${Number(t.toFixed(2))} s (measured)`
    }
    const times = (way: Way): [string, string][] => ways[way].map((r, i) => [`${way}-${i + 1}`, timeOf(r)])
    return {
      path: ['donor', 'coast-down', 'steps', name],
      now: { from: texts[0], to: texts[1], ...Object.fromEntries([...times('out'), ...times('back')]) },
    }
  })
  return { edits, found }
}
const kmh = (v: number): number => Math.round(v / KMH)

function stepsOf(known: Model['donor']['coastDown']['steps'], runs: readonly Run[]): readonly Step[] {
  const typed = Object.entries(known).flatMap(([name, { from, to }]) =>
    isGap(from) || isGap(to) ? [] : [{ name, from: from.value, to: to.value, texts: [from.text ?? '', to.text ?? ''] as [string, string] }],
  )
  if (typed.length) return typed
  const top = Math.floor(Math.min(...runs.map(r => r.speeds[0]! / KMH)) / 10) * 10,
    bottom = Math.ceil(Math.max(...runs.map(r => r.speeds.at(-1)! / KMH)) / 10) * 10
  return Array.from({ length: Math.max(0, (top - bottom) / 10) }, (_, i) => {
    const [from, to] = [top - 10 * i, top - 10 * (i + 1)]
    return { name: `${from}-to-${to}`, from: from * KMH, to: to * KMH, texts: [`${from} km/h`, `${to} km/h`] }
  })
}

/** Heading of the very first run, which is the way out. */
type WayOut = { heading?: number }

function runsOf({ name: file, bytes }: Log, before: number, wayOut: WayOut): readonly Run[] {
  const answer = readCsv(bytes, { words: name => !['time', 'speed', 'heading'].some(w => isLogColumn(w as 'time', name)) })
  if ('issues' in answer)
    throw new Refusal(
      `${answer.issues
        .slice(0, 5)
        .map(i => `${file}:${i.line}:${i.column} ${i.what}; found ${i.found}; accepted ${i.accepted}`)
        .join('\n')}\nNothing of ${file} was taken over.`,
    )
  const { columns, words } = answer.csv
  const column = (what: 'time' | 'speed' | 'heading'): NumberColumn | undefined => columns.find(c => isLogColumn(what, c.name))
  const values = (what: 'time' | 'speed', kind: Kind): Float64Array => {
    const one = column(what),
      headings = [...columns, ...words].map(c => c.name),
      near = headings.find(h => nearest(h.toLowerCase(), COLUMNS[what]) !== undefined)
    if (!one)
      throw new Refusal(
        `${file}: no column ${what}; found ${headings.join(', ')}${near ? ` (${near}?)` : ''}; accepted a column «${what} [${what === 'time' ? 's' : 'km/h'}]», with numbers`,
      )
    const si = inSi(one, kind)
    if ('found' in si) throw new Refusal(`${file}: ${what}: found ${si.found}; accepted ${si.accepted}`)
    return si
  }
  const log: SpeedLog = { times: values('time', 'time'), speeds: values('speed', 'speed') },
    at = log.times.findIndex((t, i) => i > 0 && !(t > log.times[i - 1]!))
  if (at > 0) throw new Refusal(`${file}: row ${at + 1}: the time does not rise; accepted one log, in its order`)
  const found = coastingRuns(log)
  if (found.length === 0) throw new Refusal(`${file}: no run in neutral in it: the speed nowhere falls by itself through 30 km/h or more`)
  const way = wayOf(
    log,
    column('heading'),
    words.find(w => isLogColumn('direction', w.name)),
    file,
    wayOut,
  )
  return found.map((run, i) => ({
    ...run,
    way: way?.(run) ?? ((before + i) % 2 === 0 ? 'out' : 'back'),
    where: `${file}, run ${i + 1}`,
  }))
}

/** Which way a run went, where the log says so: by a word, else by its heading against that of the first run. */
function wayOf(
  log: SpeedLog,
  heading: NumberColumn | undefined,
  direction: WordColumn | undefined,
  file: string,
  wayOut: WayOut,
): ((run: SpeedLog) => Way) | undefined {
  const row = (run: SpeedLog): number => {
    const middle = run.times[run.times.length >> 1]!
    return Math.max(
      0,
      log.times.findIndex(t => t >= middle),
    )
  }
  if (direction)
    return run => {
      const word = direction.values[row(run)]?.trim().toLowerCase()
      if (word !== 'out' && word !== 'back') throw new Refusal(`${file}: direction: found «${word ?? ''}»; accepted out, back`)
      return word
    }
  if (!heading) return undefined
  return run => {
    const now = heading.values[row(run)]!
    wayOut.heading ??= now
    // All that heads less than a quarter turn from the first run goes out as well.
    return Math.cos(((now - wayOut.heading) * Math.PI) / 180) >= 0 ? 'out' : 'back'
  }
}
