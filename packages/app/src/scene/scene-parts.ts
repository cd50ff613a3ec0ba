import {
  BoxGeometry,
  BufferGeometry,
  Color,
  CylinderGeometry,
  DoubleSide,
  EdgesGeometry,
  ExtrudeGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Matrix4,
  Mesh,
  MeshLambertMaterial,
  type Object3D,
  Plane,
  Shape,
  SphereGeometry,
  TorusGeometry,
  Vector2,
  Vector3,
} from 'three'
import type { PartGeometry } from '../scans/part-meshes.ts'
import type { SceneView } from '../worker/drawings.ts'
import type { Look, Place } from './car-scene.ts'

type Inks = Readonly<Record<'sheet' | 'ink' | 'quiet' | 'line' | 'hair' | 'act' | 'failing' | 'marginal', string>>
/** Colours of the theme as the page has them now. */
export function inksOf(of: Element): Inks {
  const probe = document.createElement('i')
  of.parentElement?.append(probe)
  const ink = (name: string): string => {
    probe.style.color = `var(--${name})`
    return getComputedStyle(probe).color
  }
  const all = {
    sheet: ink('sheet'),
    ink: ink('ink'),
    quiet: ink('quiet'),
    line: ink('line'),
    hair: ink('hair'),
    act: ink('act'),
    failing: ink('failing'),
    marginal: ink('marginal'),
  }
  probe.remove()
  return all
}
export function planesOf({ cut }: Look): readonly Plane[] {
  if (!cut) return []
  const normal = new Vector3(cut.along === 0 ? 1 : 0, cut.along === 1 ? 1 : 0, cut.along === 2 ? -1 : 0)
  return [new Plane(normal, cut.along === 2 ? cut.at : -cut.at)]
}
type Box = SceneView['bodies'][number]['box']
/** A shape: its box, or the mesh that stands for it. */
export function shapeMesh(
  { centre, half, axes }: Box,
  part: PartGeometry | undefined,
  o: { color: Color; opacity: number; edge: string; cut: readonly Plane[] },
): Mesh {
  const geometry = part?.faces ?? new BoxGeometry(2 * half[0], 2 * half[1], 2 * half[2])
  const look = { color: o.color, transparent: true, opacity: o.opacity, side: DoubleSide, clippingPlanes: [...o.cut] }
  // Flat triangles need no normals, which the mesh of a file does not bring.
  const mesh = new Mesh(geometry, new MeshLambertMaterial({ ...look, flatShading: part !== undefined }))
  const [a, b, c] = axes.map(v => new Vector3(...v)) as [Vector3, Vector3, Vector3]
  mesh.quaternion.setFromRotationMatrix(new Matrix4().makeBasis(a, b, c))
  mesh.position.set(...centre)
  const edges = part?.edges ?? new EdgesGeometry(geometry)
  mesh.add(new LineSegments(edges, new LineBasicMaterial({ color: o.edge, clippingPlanes: [...o.cut] })))
  return mesh
}
function roomBox(low: Place, high: Place): { geometry: BoxGeometry; at: Vector3 } {
  return {
    geometry: new BoxGeometry(high[0] - low[0], high[1] - low[1], high[2] - low[2]),
    at: new Vector3((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2),
  }
}
export function roomEdges(low: Place, high: Place, color: string, cut: readonly Plane[]): Object3D {
  const { geometry, at } = roomBox(low, high),
    lines = new LineSegments(new EdgesGeometry(geometry), new LineBasicMaterial({ color, clippingPlanes: [...cut] }))
  lines.position.copy(at)
  return lines
}
/** A space, by its walls as they stand where they do not stand square. */
export function spaceEdges({ low, high, outline }: SceneView['spaces'][number], color: string, cut: readonly Plane[]): Object3D {
  if (!outline) return roomEdges(low, high, color, cut)
  const [bottom, top] = [low[2], high[2]]
  const ends = outline.flatMap(([x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length] as readonly [number, number]
    const [a, b, c] = [new Vector3(x, y, bottom), new Vector3(u, v, bottom), new Vector3(x, y, top)]
    return [a, b, c, new Vector3(u, v, top), a, c]
  })
  return new LineSegments(new BufferGeometry().setFromPoints(ends), new LineBasicMaterial({ color, clippingPlanes: [...cut] }))
}
export function roomMesh(low: Place, high: Place, color: string, cut: readonly Plane[]): Object3D {
  const { geometry, at } = roomBox(low, high),
    mesh = new Mesh(
      geometry,
      new MeshLambertMaterial({ color, transparent: true, opacity: 0.22, depthWrite: false, clippingPlanes: [...cut] }),
    )
  mesh.position.copy(at)
  return mesh
}
/** A cylinder of three.js lies along y: turned to lie between two places. */
function between(geometry: BufferGeometry, from: Vector3, to: Vector3, material: Material): Mesh {
  const mesh = new Mesh(geometry, material)
  mesh.position.addVectors(from, to).multiplyScalar(0.5)
  mesh.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), new Vector3().subVectors(to, from).normalize())
  return mesh
}
export function shaftMesh({ from, to, radius }: SceneView['shafts'][number], color: string, cut: readonly Plane[]): Object3D {
  const a = new Vector3(...from),
    b = new Vector3(...to)
  return between(
    new CylinderGeometry(radius, radius, a.distanceTo(b), 20),
    a,
    b,
    new MeshLambertMaterial({ color, transparent: true, opacity: 0.4, clippingPlanes: [...cut] }),
  )
}
export function wheelMesh({ centre, radius, width }: SceneView['wheels'][number], color: string, cut: readonly Plane[]): Object3D {
  const mesh = new Mesh(
    new CylinderGeometry(radius, radius, width, 40, 1),
    new MeshLambertMaterial({ color, transparent: true, opacity: 0.35, clippingPlanes: [...cut] }),
  )
  mesh.position.set(...centre)
  return mesh
}
/** The body of the car as its side was measured, as wide as the car, to be seen through. */
export function bodyMesh(
  profile: readonly (readonly [x: number, z: number])[],
  width: number,
  o: { readonly fill: string; readonly edge: string; readonly cut: readonly Plane[] },
): Object3D {
  const geometry = new ExtrudeGeometry(new Shape(profile.map(([x, z]) => new Vector2(x, z))), { depth: width, bevelEnabled: false })
  // It is drawn in a plane and drawn out towards the eye: the plane becomes the side of the car, the way out its width.
  geometry.rotateX(Math.PI / 2)
  geometry.translate(0, width / 2, 0)
  const mesh = new Mesh(
    geometry,
    new MeshLambertMaterial({
      color: o.fill,
      transparent: true,
      opacity: 0.1,
      depthWrite: false,
      side: DoubleSide,
      clippingPlanes: [...o.cut],
    }),
  )
  mesh.add(new LineSegments(new EdgesGeometry(geometry, 1), new LineBasicMaterial({ color: o.edge, clippingPlanes: [...o.cut] })))
  return mesh
}
/** What cuts the power: a short bar through a disc. */
export function handleMark(at: Place, color: string): Object3D {
  const mesh = new Mesh(new TorusGeometry(0.035, 0.008, 8, 24), new MeshLambertMaterial({ color }))
  mesh.add(new Mesh(new CylinderGeometry(0.008, 0.008, 0.1, 10), mesh.material))
  mesh.rotation.x = Math.PI / 2
  mesh.position.set(...at)
  return mesh
}
export function massMark(at: Place, color: string): Object3D {
  const mesh = new Mesh(new SphereGeometry(0.035, 20, 12), new MeshLambertMaterial({ color, depthTest: false }))
  mesh.renderOrder = 9
  mesh.position.set(...at)
  return mesh
}
export function emptied(group: Group): void {
  group.traverse(o => {
    if (o instanceof Mesh || o instanceof LineSegments) {
      // The mesh of a part is drawn again and goes with its part.
      if (!o.geometry.userData['kept']) o.geometry.dispose()
      for (const m of [o.material].flat() as Material[]) m.dispose()
    }
  })
  group.clear()
}
