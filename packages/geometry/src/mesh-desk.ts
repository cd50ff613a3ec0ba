import type { OrientedBox, TriangleMesh, Tube, Vector } from '@ampwright/engine'
import { firstHit, type Hit } from './first-hit.ts'
import { type Gap, type GapOptions, gapBetween, gapToBox, gapToTube, type Pose } from './gap.ts'
import { type MeshMeasures, measures } from './measures.ts'
import { type PreparedMesh, prepare } from './prepare.ts'
import { type Plane, section } from './section.ts'
import { type FreeSpace, type FreeSpaceAsked, freeSpace, type SpaceProblem } from './space/free-space.ts'
import { type OnWay, tightestOnWay, type WayOptions } from './way.ts'

/** Answers kept; beyond this all are forgotten, for they are quickly asked again. */
const MOST_ANSWERS = 5000

/**
 * Meshes kept ready under names, such as the hashes of their files, behind which a worker can stand: all that goes in and out is plain data, and an answer that was
 * given is given again without being worked out.
 *
 * Throws RangeError when a name is not kept, and as `prepare` on a mesh that is none.
 */
export class MeshDesk {
  readonly #kept = new Map<string, PreparedMesh>()
  readonly #answers = new Map<string, unknown>()

  /** Keeps a mesh, in metres and its own axes, and says what it measures. A name that is kept already is kept as it is. */
  put(name: string, mesh: TriangleMesh, options: { readonly solid?: boolean } = {}): MeshMeasures {
    if (!this.#kept.has(name)) this.#kept.set(name, prepare(mesh, options))
    return this.#answer(['measures', name], () => measures(this.#mesh(name).mesh))
  }

  /** Forgets a mesh and every answer. */
  drop(name: string): void {
    if (this.#kept.delete(name)) this.#answers.clear()
  }

  gapToBox(name: string, box: OrientedBox, options: GapOptions = {}): Gap | undefined {
    return this.#answer(['box', name, box, options], () => gapToBox(this.#mesh(name), box, options))
  }

  /** The second mesh where its pose puts it. */
  gapBetween(name: string, other: string, options: GapOptions & { readonly pose?: Pose } = {}): Gap | undefined {
    return this.#answer(['between', name, other, options], () => gapBetween(this.#mesh(name), this.#mesh(other), options))
  }

  gapToTube(name: string, tube: Tube, options: GapOptions = {}): Gap | undefined {
    return this.#answer(['tube', name, tube, options], () => gapToTube(this.#mesh(name), tube, options))
  }

  tightestOnWay(name: string, half: Vector, stations: readonly Pose[], options: WayOptions = {}): OnWay {
    return this.#answer(['way', name, half, stations, options], () => tightestOnWay(this.#mesh(name), half, stations, options))
  }

  firstHit(name: string, from: Vector, along: Vector): Hit | undefined {
    return firstHit(this.#mesh(name), from, along)
  }

  section(name: string, plane: Plane): Float64Array {
    return section(this.#mesh(name), plane)
  }

  freeSpace(name: string, asked: FreeSpaceAsked): FreeSpace | { readonly problem: SpaceProblem } {
    return freeSpace(this.#mesh(name).mesh, asked)
  }

  #mesh(name: string): PreparedMesh {
    const found = this.#kept.get(name)
    if (!found) throw new RangeError(`no mesh is kept as ${name}; there are ${[...this.#kept.keys()].join(', ') || 'none'}`)
    return found
  }

  #answer<T>(asked: readonly unknown[], work: () => T): T {
    // Infinity has no JSON of its own: as null it is told from every number.
    const key = JSON.stringify(asked)
    if (this.#answers.has(key)) return this.#answers.get(key) as T
    const answer = work()
    if (this.#answers.size >= MOST_ANSWERS) this.#answers.clear()
    this.#answers.set(key, answer)
    return answer
  }
}
