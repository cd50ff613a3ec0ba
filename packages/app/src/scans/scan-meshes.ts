import { BufferAttribute, BufferGeometry, DoubleSide, Group, Mesh, MeshLambertMaterial, type Plane } from 'three'
import type { ScanMesh } from './scan-thread.ts'

export type ScanLook = { readonly shown: boolean; readonly seeThrough: boolean; readonly color: string; readonly cut: readonly Plane[] }
/** Shares of light a see-through skin lets by. */
const THIN = 0.35

/** The scans of a scene. They stay as they are while shapes come and go: a mesh of millions of triangles goes to the graphics card once. */
export class ScanMeshes {
  readonly group = new Group()
  private readonly meshes = new Map<string, { readonly key: string; readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial> }>()

  keyOf(scan: string): string | undefined {
    return this.meshes.get(scan)?.key
  }
  put(scan: string, key: string, { positions, triangles }: ScanMesh): void {
    this.drop(scan)
    const geometry = new BufferGeometry()
    geometry.setAttribute('position', new BufferAttribute(positions, 3))
    geometry.setIndex(new BufferAttribute(triangles, 1))
    // Flat triangles need no normals: less memory, and a rough skin looks rough.
    const mesh = new Mesh(geometry, new MeshLambertMaterial({ side: DoubleSide, flatShading: true }))
    this.meshes.set(scan, { key, mesh })
    this.group.add(mesh)
  }
  /** Takes away what is not among these. */
  keep(scans: readonly string[]): void {
    for (const scan of this.meshes.keys()) if (!scans.includes(scan)) this.drop(scan)
  }
  look({ shown, seeThrough, color, cut }: ScanLook): void {
    this.group.visible = shown
    for (const { mesh } of this.meshes.values()) {
      const { material } = mesh
      material.color.set(color)
      material.clippingPlanes = [...cut]
      if (material.transparent !== seeThrough) material.needsUpdate = true
      material.transparent = seeThrough
      material.opacity = seeThrough ? THIN : 1
      material.depthWrite = !seeThrough
    }
  }
  dispose(): void {
    this.keep([])
  }
  private drop(scan: string): void {
    const before = this.meshes.get(scan)
    if (!before) return
    this.meshes.delete(scan)
    this.group.remove(before.mesh)
    before.mesh.geometry.dispose()
    before.mesh.material.dispose()
  }
}
