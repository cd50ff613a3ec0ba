import { BoxGeometry, EdgesGeometry, Group, LineBasicMaterial, LineSegments, Mesh, MeshLambertMaterial } from 'three'

/** A module where it stands, square to the car [m]. */
export type PackedBox = { readonly low: readonly [number, number, number]; readonly high: readonly [number, number, number] }

/** Modules packed into a free space, until another answer comes. */
export class PackedMeshes {
  readonly group = new Group()

  show(boxes: readonly PackedBox[], color: string): void {
    this.dispose()
    const skin = new MeshLambertMaterial({ color, transparent: true, opacity: 0.55 }),
      line = new LineBasicMaterial({ color })
    for (const { low, high } of boxes) {
      const geometry = new BoxGeometry(high[0] - low[0], high[1] - low[1], high[2] - low[2]),
        mesh = new Mesh(geometry, skin)
      mesh.position.set((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
      mesh.add(new LineSegments(new EdgesGeometry(geometry), line))
      this.group.add(mesh)
    }
  }
  dispose(): void {
    this.group.traverse(o => {
      if (o instanceof Mesh || o instanceof LineSegments) {
        o.geometry.dispose()
        o.material.dispose()
      }
    })
    this.group.clear()
  }
}
