import { BufferAttribute, BufferGeometry, DoubleSide, Group, Mesh, MeshLambertMaterial, type Plane } from 'three'
import type { ScanDrawn, ScanMesh } from './scan-thread.ts'

export type ScanLook = { readonly shown: boolean; readonly seeThrough: boolean; readonly color: string; readonly cut: readonly Plane[] }
type Skin = Mesh<BufferGeometry, MeshLambertMaterial>
/** Shares of light a see-through skin lets by. */
const THIN = 0.35

/** The scans of a scene. They stay as they are while shapes come and go: a mesh of millions of triangles goes to the graphics card once. */
export class ScanMeshes {
  readonly group = new Group()
  private readonly meshes = new Map<string, { readonly key: string; readonly whole: Skin; readonly moving: Skin | undefined }>()

  keyOf(scan: string): string | undefined {
    return this.meshes.get(scan)?.key
  }
  put(scan: string, key: string, drawn: ScanDrawn): void {
    this.drop(scan)
    // Flat triangles need no normals: less memory, and a rough skin looks rough.
    const material = new MeshLambertMaterial({ side: DoubleSide, flatShading: true }),
      whole = new Mesh(geometryOf(drawn), material),
      moving = drawn.moving && new Mesh(geometryOf(drawn.moving), material)
    this.meshes.set(scan, { key, whole, moving })
    this.group.add(whole, ...(moving ? [moving] : []))
  }
  /** Shows large scans by fewer triangles, or whole. Gives whether one is drawn otherwise for it. */
  coarse(on: boolean): boolean {
    let any = false
    for (const { whole, moving } of this.meshes.values())
      if (moving) {
        any = this.group.visible
        moving.visible = on
        whole.visible = !on
      }
    return any
  }
  /** Takes away what is not among these. */
  keep(scans: readonly string[]): void {
    for (const scan of this.meshes.keys()) if (!scans.includes(scan)) this.drop(scan)
  }
  look({ shown, seeThrough, color, cut }: ScanLook): void {
    this.group.visible = shown
    for (const { whole } of this.meshes.values()) {
      const { material } = whole
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
    for (const skin of [before.whole, ...(before.moving ? [before.moving] : [])]) {
      this.group.remove(skin)
      skin.geometry.dispose()
    }
    before.whole.material.dispose()
  }
}

function geometryOf({ positions, triangles }: ScanMesh): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setIndex(new BufferAttribute(triangles, 1))
  return geometry
}
