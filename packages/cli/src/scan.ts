import { existsSync, writeFileSync } from 'node:fs'
import type { System } from '@ampwright/conversion'
import type { AlignedBox, ModuleFace } from '@ampwright/engine'
import { type MeshFile, MOST_MESH_BYTES, readMesh, writePly, writeStl } from '@ampwright/exchange'
import {
  boundsOf,
  byAxes,
  byPicks,
  FILE_UNITS,
  type FileAxis,
  type FileUnit,
  placed,
  type ScanAsked,
  type ScanProblem,
  type ScanSurvey,
  scanSurvey,
} from '@ampwright/geometry'
import { Refusal } from '@ampwright/workbench'
import { carScans } from './car-scans.ts'
import { bytesOf } from './load.ts'
import { packed } from './scan-pack.ts'
import { effort, packJson, printEffort, printPack } from './scan-pack-print.ts'
import { printScan } from './scan-print.ts'
import { boxFrom, lengthFrom, limitsFrom, pickFrom, placeFrom } from './scan-words.ts'
import type { Terminal } from './terminal.ts'

export type ScanOptions = {
  readonly unit?: FileUnit
  readonly up?: FileAxis
  readonly rear?: FileAxis
  readonly mirrored?: boolean
  readonly pick?: readonly string[]
  readonly from?: string
  readonly resolution: string
  readonly within?: string
  readonly keep: string
  readonly box?: readonly string[]
  readonly pack?: string
  readonly air: string
  readonly down: readonly ModuleFace[]
  readonly steps: string
  readonly seed: string
  readonly out?: string
  readonly units: System
  readonly json?: boolean
}

/** Reads a scan, lays it into the car and answers what is asked of it. Gives the exit code: 1 where a box runs into the scan. */
export function scan(file: string, o: ScanOptions, t: Terminal): number {
  if (/\.ya?ml$/.test(file)) return carScans(file, o, t)
  const read = readMesh(bytesOf(file, 'a mesh such as scan.stl', MOST_MESH_BYTES))
  if ('issue' in read) {
    const { where, what, found, accepted } = read.issue
    throw new Refusal(`${file}: ${where}: ${what}; found ${found}; accepted ${accepted}`)
  }
  const asked = askedOf(read, o),
    survey = scanSurvey(read.mesh, asked)
  if ('problem' in survey)
    throw new Refusal(
      `scan: ${optionOf(survey.problem)}: ${survey.problem.what}; found ${survey.problem.found}; accepted ${survey.problem.accepted}`,
    )
  const { lies, free } = survey,
    pack = packed(o, lies && free && { mesh: lies.mesh, field: free.field })
  if (o.out !== undefined) write(o.out, survey)
  if (o.json) t.out(JSON.stringify({ ...scanJson(read, survey), ...(pack && { pack: packJson(pack) }), effort: effort() }, null, 2))
  else {
    printScan(file, read, survey, asked, t, o.units)
    if (pack) printPack(pack, t, o.units)
    printEffort(effort(), t)
  }
  return [...survey.gaps, ...(pack?.gaps ?? [])].some(g => g.overlap) ? 1 : 0
}

/** What the options say and ask. glTF says unit and upward axis itself. */
function askedOf(read: MeshFile, o: ScanOptions): ScanAsked {
  const picks = (o.pick ?? []).map(pickFrom),
    byAxis = picks.length === 0 && o.rear !== undefined,
    // Distances between points tell the unit better than a format does: not every program keeps to metres.
    unit = o.unit ?? (picks.length > 0 ? undefined : read.unit),
    up = o.up ?? (byAxis ? read.up : undefined)
  const lies = {
    ...(unit === undefined ? {} : { unit }),
    ...(up === undefined ? {} : { up }),
    ...(o.rear === undefined ? {} : { rear: o.rear }),
    ...(o.mirrored ? { mirrored: true } : {}),
    picks,
    boxes: (o.box ?? []).map(boxFrom),
  }
  if (o.from === undefined) return lies
  const free = {
    from: placeFrom('--from', o.from),
    edge: lengthFrom('--resolution', o.resolution),
    keep: lengthFrom('--keep', o.keep, true),
  }
  return { ...lies, free: { ...free, within: o.within === undefined ? boundsInCar(read, lies) : limitsFrom(o.within) } }
}

/** The limits of the scan itself, where it is known how it lies; otherwise anything, for the survey will say what is missing. */
function boundsInCar({ mesh }: MeshFile, { unit, up, rear, mirrored = false, picks = [] }: ScanAsked): AlignedBox {
  const bySide = unit && up && rear ? byAxes({ scale: FILE_UNITS[unit], up, rear, mirrored }) : undefined,
    byPoints = picks.length > 0 ? byPicks(picks, { mirrored, ...(unit ? { unit } : {}) }) : undefined,
    placement = byPoints ? ('problem' in byPoints ? undefined : byPoints.placement) : bySide
  return placement ? boundsOf(placed(mesh, placement)) : { low: [0, 0, 0], high: [0, 0, 0] }
}

const OPTIONS: Readonly<Record<ScanProblem['about'], string>> = {
  unit: '--unit',
  axes: '--up and --rear',
  picks: '--pick',
  place: '--from and --box are places in the car',
  free: '--from',
}
const optionOf = ({ about }: ScanProblem): string => OPTIONS[about]

function write(file: string, { lies }: ScanSurvey): void {
  if (!lies)
    throw new Refusal('scan: --out: where the scan lies in the car is not known; accepted --pick three times, or --unit, --up and --rear')
  const writer = file.endsWith('.stl') ? writeStl : file.endsWith('.ply') ? writePly : undefined
  if (!writer) throw new Refusal(`scan: --out ${file}: found a name that ends otherwise; accepted one that ends in .stl or .ply`)
  if (existsSync(file)) throw new Refusal(`scan: --out ${file}: is there already; nothing was written`)
  try {
    writeFileSync(file, writer(lies.mesh))
  } catch (e) {
    throw new Refusal(`scan: --out ${file}: cannot be written (${(e as NodeJS.ErrnoException).code ?? 'unknown reason'})`)
  }
}

/** Metres, square metres, cubic metres; what is in the unit of the file says so. */
function scanJson({ format, unit, up }: MeshFile, { file, likelyUnits, lies, free, gaps }: ScanSurvey): object {
  return {
    format,
    ...(unit ? { unitOfFormat: unit, upOfFormat: up } : {}),
    inFile: file,
    likelyUnits,
    ...(lies && {
      inCar: lies.inCar,
      placement: lies.placement,
      ...(lies.alignment && {
        alignment: {
          unit: lies.alignment.unit ?? null,
          scaleOff: lies.alignment.scaleOff,
          residuals: lies.alignment.residuals,
          residual: lies.alignment.residual,
        },
      }),
    }),
    ...(free && {
      free: { volume: free.volume, edge: free.field.edge, low: free.field.low, counts: free.field.counts, reached: free.reached },
    }),
    gaps,
  }
}
