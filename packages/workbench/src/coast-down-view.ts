import type { Edit, System } from '@ampwright/conversion'
import type { Assessment } from '@ampwright/engine'
import { type ChangeView, changeViews } from './change-views.ts'
import { coastDownEdits, type Log } from './coast-down.ts'
import type { Desk } from './desk/desk.ts'
import type { Opened } from './desk/finding-view.ts'
import { Refusal } from './refusal.ts'
import { headed, shown } from './shown.ts'

/** What a coast-down comes to: the road load by it, and each step with its force and how well its runs agree. */
export type CoastDownView = {
  readonly figures: readonly (Opened & { readonly label: string })[]
  readonly steps: Readonly<Record<string, { readonly force?: Opened; readonly accuracy?: Opened; readonly slowing?: Opened }>>
  readonly missing: readonly { readonly path: string; readonly label: string }[]
}
const FIGURES = ['coast-down.f0', 'coast-down.f1', 'coast-down.f2', 'coast-down.wind', 'coast-down.coasting-mass']

/** The coast-down of a car as assessed. */
export function coastDownView(names: readonly string[], a: Assessment, system: System): CoastDownView {
  const opened = (id: string): (Opened & { label: string }) | undefined => {
    const f = a.figures.get(id)
    return f && { name: id, label: headed(f.label), text: shown(f, system, a.halves.get(id)), figure: true }
  }
  const step = (name: string): CoastDownView['steps'][string] => {
    const force = opened(`coast-down.force@${name}`),
      accuracy = opened(`coast-down-runs.accuracy@${name}`),
      slowing = opened(`coast-down-runs.slowing@${name}`)
    return { ...(force ? { force } : {}), ...(accuracy ? { accuracy } : {}), ...(slowing ? { slowing } : {}) }
  }
  return {
    figures: FIGURES.flatMap(id => opened(id) ?? []),
    steps: Object.fromEntries(names.map(n => [n, step(n)])),
    missing: a.gaps.filter(g => g.path.startsWith('donor.coast-down')).map(g => ({ path: g.path, label: g.label })),
  }
}

/** What speed logs would come to: the runs found in them and the steps read off; or why nothing of them is taken. */
export type LogTrial = {
  readonly found: readonly string[]
  readonly steps: readonly {
    readonly name: string
    readonly from: string
    readonly to: string
    readonly times: readonly (readonly [run: string, time: string])[]
  }[]
  readonly edits: readonly Edit[]
  readonly changes: readonly ChangeView[]
  readonly refused: readonly string[]
}

/** Tries speed logs on a conversion without keeping them. */
export function logTrial(desk: Desk, logs: readonly Log[]): LogTrial {
  const none = { found: [], steps: [], edits: [], changes: [] }
  try {
    const { edits, found } = coastDownEdits(logs, desk.current().model),
      tried = desk.tried(edits)
    if (!tried.ok)
      return { ...none, found, refused: tried.issues.map(i => `${i.path}: ${i.what}; found ${i.found}; accepted ${i.accepted}`) }
    return { found, steps: edits.map(stepOf), edits, changes: changeViews(desk, edits), refused: [] }
  } catch (e) {
    if (e instanceof Refusal) return { ...none, refused: e.message.split('\n') }
    throw e
  }
}

function stepOf({ path, now }: Edit): LogTrial['steps'][number] {
  const { from = '', to = '', ...times } = now as Readonly<Record<string, string>>,
    name = (Array.isArray(path) ? path : String(path).split('.')).at(-1) as string
  return { name, from, to, times: Object.entries(times).map(([run, t]) => [run, t.replace(/ \(.*$/, '')] as const) }
}
