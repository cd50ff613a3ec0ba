import {
  type BayAnswer,
  type MeshesTask,
  packBay,
  type SurveyedMeshes,
  type SurveyOfScan,
  type TriangleMesh,
  type Vector,
  type VoxelField,
} from '@ampwright/engine'
import { readMesh } from '@ampwright/exchange'
import {
  boundsOf,
  type CarMeshes,
  carMeshes,
  carSurvey,
  coarser,
  FILE_UNITS,
  gapsTo,
  heldAgainst,
  inFile,
  type LiesInCar,
  nearestOf,
  type PartFile,
  type PartMesh,
  placed,
  prepare,
  seenAt,
  unitsBySize,
  unmeasured,
  waysPast,
} from '@ampwright/geometry'
import type { ScanNamed } from '@ampwright/workbench'
import { transfer } from 'comlink'
import { breath } from '../worker/slices.ts'
import type { PackedBox } from './packed-meshes.ts'

/** A scan as it is drawn: corners in the car [m], three numbers for each triangle. */
export type ScanMesh = { readonly positions: Float32Array; readonly triangles: Uint32Array }
/** A scan and, where it is a large one, what is drawn of it for as long as the view moves. */
export type ScanDrawn = ScanMesh & { readonly moving?: ScanMesh }
/** What the page hears of a scan. `key` changes whenever it lies elsewhere, so that it is drawn anew. */
export type ScanKnown = { readonly key: string; readonly triangles: number; readonly survey?: SurveyOfScan; readonly fault?: string }

/** What the page hears of the meshes of parts, and which stand for their parts in place of a box. */
export type MeshesKnown = { readonly survey: SurveyedMeshes; readonly stand: readonly string[] }

/** How far a search for modules is, and what it found. */
export type Packing = {
  readonly placed: number
  readonly bound: number
  readonly steps: number
  readonly seconds: number
  readonly done: boolean
  /** At the end: where they stand, the least gap to the scan over all its triangles, and how many touch it. */
  readonly boxes?: readonly PackedBox[]
  readonly nearest?: number
  readonly touching?: number
}
/** A search ends when its answer is proven best, or after so long [ms] and so many steps. */
const LONGEST = 60_000,
  MOST_STEPS = 20_000
/** Air between two modules [m]. */
const AIR = 0.003
const SEED = 1
/** Triangles drawn while the view moves: some 80 ms a frame where the processor draws, bench/scan-frames. */
const MOVING = 60_000
/** How often a search says how far it is [ms]. */
const BEAT = 200

type Read = Partial<PartFile> & { readonly mark: string; readonly fault?: string }
type Laid = { readonly key: string; readonly lies: LiesInCar; readonly survey?: SurveyOfScan; readonly field?: VoxelField }

/** Reads, lays and measures scans and meshes of parts in a thread of its own. A mesh is read once, and laid anew only when it lies elsewhere. */
export class ScanThread {
  private readonly files = new Map<string, Read>()
  private readonly laid = new Map<string, Laid>()
  private meshed: CarMeshes | undefined
  private stopped = false

  /** Whether the bytes of a file are wanted. */
  wants(file: string, mark: string): boolean {
    return this.files.get(file)?.mark !== mark
  }
  take(file: string, mark: string, bytes: Uint8Array): void {
    const read = readMesh(bytes)
    if ('issue' in read) {
      const { where, what, found, accepted } = read.issue
      this.files.set(file, { mark, fault: `${where}: ${what}; found ${found}; accepted ${accepted}` })
    } else this.files.set(file, { mark, ...read })
  }
  /** Lays the meshes of parts and measures how near these come to each other; scans that are followed after it take the parts as they are then. */
  meshes(task: MeshesTask): MeshesKnown {
    this.meshed = carMeshes(
      task,
      ({ file }) => {
        const { mesh, unit, up, fault = 'its file is not there' } = this.files.get(file) ?? {}
        return mesh ? { mesh, unit, up } : fault
      },
      this.meshed,
    )
    return { survey: this.meshed.survey, stand: [...this.meshed.parts.keys()] }
  }
  /** The mesh that stands for a part, in the axes of this, as it is drawn. */
  partMesh(shape: string): ScanMesh | undefined {
    return this.meshed?.parts.has(shape) ? drawn((this.meshed.laid.get(shape) as PartMesh).mesh) : undefined
  }
  /** Measures what is asked of a scan; one that has too few points is only laid out to be looked at. */
  follow(named: ScanNamed): ScanKnown | undefined {
    const { mesh, fault } = this.files.get(named.file) ?? {},
      { scan, task } = named
    if (!mesh)
      return fault === undefined ? undefined : { key: '', triangles: 0, fault, ...(task ? { survey: unmeasured(task, fault) } : {}) }
    const triangles = mesh.triangles.length / 3,
      before = this.laid.get(scan),
      parts = this.meshed?.parts
    if (task && before?.survey?.pose === task.pose) {
      const { tree } = before.lies,
        { gaps, ways } = before.survey,
        survey = { ...before.survey, gaps: gapsTo(tree, task.bodies, parts, gaps), ways: waysPast(tree, task.bodies, parts, ways) }
      this.laid.set(scan, { ...before, survey })
      return { key: before.key, triangles, survey }
    }
    const done = task && carSurvey(mesh, task, parts)
    if (task && done?.lies) {
      const key = task.pose
      this.laid.set(scan, { key, lies: done.lies, survey: done.survey, ...(done.field ? { field: done.field } : {}) })
      return { key, triangles, survey: done.survey }
    }
    const key = `${named.file} ${named.mark} ${named.unit ?? ''}`
    if (before?.key !== key) this.laid.set(scan, { key, lies: toLookAt(mesh, named.unit) })
    return { key, triangles, ...(done ? { survey: done.survey } : {}) }
  }
  /** Packs modules into the free space of a scan; tells how far it is, and stops when told to. Undefined where no free space is known. */
  async pack(scan: string, size: Vector, hear: (so: Packing) => void): Promise<Packing | undefined> {
    const laid = this.laid.get(scan)
    if (!laid?.field) return undefined
    this.stopped = false
    const began = performance.now()
    let last: BayAnswer | undefined,
      paused = began
    for (const answer of packBay(laid.field, { size, clearance: AIR, down: ['bottom'] }, { seed: SEED })) {
      last = answer
      const now = performance.now()
      if (this.stopped || answer.steps >= MOST_STEPS || now - began > LONGEST) break
      if (now - paused < BEAT) continue
      hear(soFar(answer, began, false))
      await breath()
      paused = performance.now()
    }
    if (!last) return undefined
    const held = heldAgainst(laid.lies.tree, last),
      nearest = nearestOf(held)
    return {
      ...soFar(last, began, true),
      boxes: last.placed.map(p => p.box),
      ...(nearest ? { nearest: nearest.gap.gap } : {}),
      touching: held.gaps.filter(g => g.overlap).length,
    }
  }
  stop(): void {
    this.stopped = true
  }
  /** The mesh as it is drawn. */
  mesh(scan: string): ScanDrawn | undefined {
    const laid = this.laid.get(scan)
    if (!laid) return undefined
    const { mesh } = laid.lies,
      { mesh: less } = coarser(mesh, MOVING)
    if (less === mesh) return drawn(mesh)
    const whole = sent(mesh),
      moving = sent(less)
    return transfer({ ...whole, moving }, [...buffers(whole), ...buffers(moving)])
  }
  /** The point of the file that stands first in a line of sight; undefined where none does. */
  pick(scan: string, from: Vector, towards: Vector): { readonly onScan: Vector; readonly inCar: Vector } | undefined {
    const laid = this.laid.get(scan),
      inCar = laid && seenAt(laid.lies.tree, from, towards)
    return inCar && { inCar, onScan: inFile(laid.lies.placement, inCar) }
  }
}

function drawn(mesh: TriangleMesh): ScanMesh {
  const own = sent(mesh)
  return transfer(own, buffers(own))
}
const sent = (mesh: TriangleMesh): ScanMesh => ({ positions: Float32Array.from(mesh.positions), triangles: mesh.triangles.slice() })
const buffers = ({ positions, triangles }: ScanMesh): ArrayBufferLike[] => [positions.buffer, triangles.buffer]

const soFar = ({ placed, bound, steps }: BayAnswer, began: number, done: boolean): Packing => ({
  placed: placed.length,
  bound,
  steps,
  seconds: (performance.now() - began) / 1000,
  done,
})

/** A mesh whose place is not known yet: in the likeliest unit, its middle where the front of a car is. */
function toLookAt(mesh: TriangleMesh, unit: ScanNamed['unit']): LiesInCar {
  const { low, high } = boundsOf(mesh),
    scale = FILE_UNITS[unit ?? unitsBySize({ low, high })[0] ?? 'mm'],
    middle = low.map((l, i) => ((l + (high[i] as number)) / 2) * scale) as unknown as Vector,
    placement = {
      scale,
      turn: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      shift: [0.5 - middle[0], -middle[1], 0.6 - middle[2]],
    } as const,
    inPlace = placed(mesh, placement)
  return { placement, mesh: inPlace, tree: prepare(inPlace) }
}
