import { BufferAttribute, BufferGeometry, EdgesGeometry } from 'three'
import type { ScanMesh } from './scan-thread.ts'

/** Faces that meet at more than this show an edge [°]. */
const SHARP = 30
/** The mesh of a part and its sharp edges, in the axes of the part from its middle. */
export type PartGeometry = { readonly faces: BufferGeometry; readonly edges: BufferGeometry }

/** The meshes that stand for parts of a scene in place of their boxes. They stay as they are while shapes are moved. */
export class PartMeshes {
  private readonly parts = new Map<string, PartGeometry & { readonly key: string }>()

  of(shape: string): PartGeometry | undefined {
    return this.parts.get(shape)
  }
  keyOf(shape: string): string | undefined {
    return this.parts.get(shape)?.key
  }
  put(shape: string, key: string, { positions, triangles }: ScanMesh): void {
    this.drop(shape)
    const faces = new BufferGeometry()
    faces.setAttribute('position', new BufferAttribute(positions, 3))
    faces.setIndex(new BufferAttribute(triangles, 1))
    const edges = new EdgesGeometry(faces, SHARP)
    for (const kept of [faces, edges]) kept.userData['kept'] = true
    this.parts.set(shape, { key, faces, edges })
  }
  /** Takes away what is not among these. */
  keep(shapes: readonly string[]): void {
    for (const shape of this.parts.keys()) if (!shapes.includes(shape)) this.drop(shape)
  }
  dispose(): void {
    this.keep([])
  }
  private drop(shape: string): void {
    const before = this.parts.get(shape)
    this.parts.delete(shape)
    before?.faces.dispose()
    before?.edges.dispose()
  }
}
