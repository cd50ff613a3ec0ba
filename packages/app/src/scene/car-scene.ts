import {
  AmbientLight,
  type Camera,
  Color,
  DirectionalLight,
  GridHelper,
  Group,
  Mesh,
  PerspectiveCamera,
  Plane,
  Raycaster,
  Scene as ThreeScene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three'
import { OrbitControls } from 'three/addons/controls/OrbitControls.js'
import { type PackedBox, PackedMeshes } from '../scans/packed-meshes.ts'
import { PartMeshes } from '../scans/part-meshes.ts'
import { ScanMeshes } from '../scans/scan-meshes.ts'
import type { ScanDrawn, ScanMesh } from '../scans/scan-thread.ts'
import type { SceneView } from '../worker/drawings.ts'
import {
  bodyMesh,
  emptied,
  handleMark,
  inksOf,
  massMark,
  planesOf,
  roomEdges,
  roomMesh,
  shaftMesh,
  shapeMesh,
  spaceEdges,
  wheelMesh,
} from './scene-parts.ts'

export type Place = readonly [number, number, number]
export type Look = {
  readonly layers: {
    readonly spaces: boolean
    readonly kept: boolean
    readonly car: boolean
    readonly mass: boolean
    readonly scans: boolean
    readonly seeThrough: boolean
  }
  /** Cut away what lies ahead of, right of or above a place; no cut where undefined. */
  readonly cut: { readonly along: 0 | 1 | 2; readonly at: number } | undefined
  readonly chosen: string | undefined
}
/** Where a name stands on the canvas [px]; undefined where it is out of sight. */
export type Label = { readonly name: string; readonly x: number; readonly y: number }
type Hooks = {
  readonly choose: (name: string | undefined) => void
  readonly move: (name: string, to: Place, done: boolean) => void
  readonly labels: (labels: readonly Label[]) => void
  /** A line of sight somebody clicked along, while places are picked on a scan. */
  readonly sight: (from: Place, towards: Place) => void
  readonly picking: () => boolean
  /** Whether shapes may be dragged here. */
  readonly mayMove: () => boolean
}
/** Dragged things go in steps of this [m]. */
const SNAP = 0.005
/** Room a name takes on the canvas: high, and wide for each of its characters; with a mass behind it, so many more [px]. */
const NAME = { high: 17, each: 6.6, withMass: 9 } as const
const meet = (a: Label, b: Label, more: number): boolean =>
  Math.abs(a.y - b.y) < NAME.high && Math.abs(a.x - b.x) < NAME.each * ((a.name.length + b.name.length) / 2 + more) + 6
/** So long after the last movement large scans are drawn whole again [ms]. */
const REST = 250
/** A pointer that moved less than this between down and up was a click [px]. */
const STILL = 5

/** The car drawn in three dimensions; it draws anew only when something has changed. Coordinates are those of the car. */
export class CarScene {
  private readonly renderer: WebGLRenderer
  private readonly camera = new PerspectiveCamera(35, 1, 0.05, 60)
  private readonly scene = new ThreeScene()
  private readonly controls: OrbitControls
  private readonly hooks: Hooks
  private readonly canvas: HTMLCanvasElement
  private content = new Group()
  private readonly scans = new ScanMeshes()
  private readonly packed = new PackedMeshes()
  private readonly parts = new PartMeshes()
  private pressed: { readonly x: number; readonly y: number } | undefined
  private bodies = new Map<string, Mesh>()
  private view: SceneView | undefined
  private look: Look | undefined
  private asked = 0
  private rest: ReturnType<typeof setTimeout> | undefined
  private framed = false
  private drag: { name: string; plane: Plane; from: Vector3; start: Vector3 } | undefined

  /** Throws where the browser gives no WebGL. */
  constructor(canvas: HTMLCanvasElement, hooks: Hooks) {
    this.canvas = canvas
    this.hooks = hooks
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true })
    this.renderer.localClippingEnabled = true
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio))
    this.camera.up.set(0, 0, 1)
    this.scene.add(this.content, this.scans.group, this.packed.group, new AmbientLight(0xffffff, 1.6))
    const sun = new DirectionalLight(0xffffff, 1.8)
    sun.position.set(-2, 3, 5)
    this.scene.add(sun)
    this.controls = new OrbitControls(this.camera, canvas)
    this.controls.addEventListener('change', () => this.draw())
    canvas.addEventListener('pointerdown', this.down)
    canvas.addEventListener('pointermove', this.moved)
    canvas.addEventListener('pointerup', this.up)
    canvas.addEventListener('pointercancel', this.up)
  }
  dispose(): void {
    cancelAnimationFrame(this.asked)
    clearTimeout(this.rest)
    this.canvas.removeEventListener('pointerdown', this.down)
    this.canvas.removeEventListener('pointermove', this.moved)
    this.canvas.removeEventListener('pointerup', this.up)
    this.canvas.removeEventListener('pointercancel', this.up)
    this.controls.dispose()
    emptied(this.content)
    this.scans.dispose()
    this.packed.dispose()
    this.parts.dispose()
    this.renderer.dispose()
  }
  resize(width: number, height: number): void {
    this.renderer.setSize(width, height, false)
    this.camera.aspect = width / Math.max(1, height)
    this.camera.updateProjectionMatrix()
    this.draw()
  }
  show(view: SceneView, look: Look): void {
    this.view = view
    this.look = look
    this.build()
    if (!this.framed) this.frame('corner')
    this.draw()
  }
  /** Shows these scans and no other; each is fetched only where it lies elsewhere than it is drawn. */
  async showScans(
    scans: readonly { readonly scan: string; readonly key: string }[],
    fetch: (scan: string) => Promise<ScanDrawn | undefined>,
  ): Promise<void> {
    this.scans.keep(scans.map(s => s.scan))
    for (const { scan, key } of scans) {
      if (key === '' || this.scans.keyOf(scan) === key) continue
      const mesh = await fetch(scan)
      if (mesh) this.scans.put(scan, key, mesh)
    }
    if (this.look) this.lookAtScans(this.look)
    this.draw()
  }
  /** Draws these parts by their meshes and no other; each is fetched only where it is another one than before. */
  async showParts(
    parts: readonly { readonly shape: string; readonly key: string }[],
    fetch: (shape: string) => Promise<ScanMesh | undefined>,
  ): Promise<void> {
    this.parts.keep(parts.map(p => p.shape))
    for (const { shape, key } of parts) {
      if (this.parts.keyOf(shape) === key) continue
      const mesh = await fetch(shape)
      if (mesh) this.parts.put(shape, key, mesh)
    }
    this.build()
    this.draw()
  }
  /** Shows modules packed into the free space of a scan. */
  showPacked(boxes: readonly PackedBox[]): void {
    this.packed.show(boxes, inksOf(this.canvas).act)
    this.draw()
  }
  private lookAtScans(look: Look): void {
    const { scans: shown, seeThrough } = look.layers
    this.scans.look({ shown, seeThrough, color: inksOf(this.canvas).quiet, cut: planesOf(look) })
  }
  /** Turns the car so that it is seen from one side. */
  frame(from: 'corner' | 'above' | 'left' | 'ahead'): void {
    const middle = this.middle(),
      far = 1.25 * this.reach()
    const way: Readonly<Record<typeof from, Place>> = {
      corner: [-0.75, -0.85, 0.6],
      above: [0, -0.001, 1.3],
      left: [0, -1.3, 0.05],
      ahead: [-1.3, 0, 0.1],
    }
    const [x, y, z] = way[from]
    this.camera.position.set(middle.x + x * far, middle.y + y * far, middle.z + z * far)
    this.controls.target.copy(middle)
    this.controls.update()
    this.framed = true
    this.draw()
  }
  /** Puts a shape elsewhere for as long as nobody shows the scene anew. */
  put(name: string, to: Place): void {
    this.bodies.get(name)?.position.set(...to)
    this.draw()
  }
  /** How long drawing takes [ms], as while the view moves or whole, the middle of several frames one after the other: a measure for the bench. */
  frameTime(frames: number, moving: boolean): number {
    this.scans.coarse(moving)
    const gl = this.renderer.getContext(),
      pixel = new Uint8Array(4)
    const times = Array.from({ length: frames }, (_, i) => {
      const began = performance.now()
      this.camera.position.applyAxisAngle(this.camera.up, 0.01 * (i % 2 ? 1 : -1))
      this.renderer.render(this.scene, this.camera)
      // Reading a pixel waits until it is drawn.
      gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel)
      return performance.now() - began
    })
    return times.toSorted((a, b) => a - b)[frames >> 1] ?? Number.NaN
  }

  /** Triangles of the last drawing, for browser tests. */
  triangles(): number {
    return this.renderer.info.render.triangles
  }

  private build(): void {
    const { view, look } = this
    if (!view || !look) return
    this.lookAtScans(look)
    emptied(this.content)
    this.bodies = new Map()
    const inks = inksOf(this.canvas),
      cut = planesOf(look),
      most = Math.max(1, ...view.bodies.map(b => b.mass ?? 0))
    for (const body of view.bodies) {
      const ink =
        body.outcome === 'failing'
          ? inks.failing
          : body.outcome === 'marginal'
            ? inks.marginal
            : body.kind === 'stays in the car'
              ? inks.quiet
              : inks.act
      const tint = look.layers.mass ? new Color(inks.sheet).lerp(new Color(inks.ink), (body.mass ?? 0) / most) : new Color(ink)
      const mesh = shapeMesh(body.box, this.parts.of(body.name), {
        color: tint,
        opacity: body.name === look.chosen ? 0.9 : 0.62,
        edge: body.name === look.chosen ? inks.ink : ink,
        cut,
      })
      mesh.userData['name'] = body.name
      this.bodies.set(body.name, mesh)
      this.content.add(mesh)
    }
    if (look.layers.spaces) for (const r of view.spaces) this.content.add(spaceEdges(r, inks.quiet, cut))
    if (look.layers.kept) {
      for (const r of view.kept) this.content.add(roomMesh(r.low, r.high, inks.failing, cut))
      for (const s of view.shafts) this.content.add(shaftMesh(s, inks.failing, cut))
    }
    for (const w of view.wheels) this.content.add(wheelMesh(w, inks.line, cut))
    if (look.layers.car && view.car) {
      const { front, rear, width, height } = view.car
      this.content.add(
        view.profile
          ? bodyMesh(view.profile, width, { fill: inks.line, edge: inks.line, cut })
          : roomEdges([front, -width / 2, 0.15], [rear, width / 2, height], inks.line, cut),
      )
    }
    for (const h of view.handles) this.content.add(handleMark(h.at, h.outcome === 'failing' ? inks.failing : inks.ink))
    if (view.centreOfMass) this.content.add(massMark(view.centreOfMass, inks.ink))
    const ground = new GridHelper(8, 16, inks.line, inks.hair)
    ground.rotation.x = Math.PI / 2
    ground.position.set(this.middle().x, 0, 0)
    this.content.add(ground)
  }
  private middle(): Vector3 {
    const c = this.view?.car,
      xs = this.view?.bodies.map(b => b.box.centre[0]) ?? [0]
    return c ? new Vector3((c.front + c.rear) / 2, 0, c.height / 3) : new Vector3((Math.min(...xs) + Math.max(...xs)) / 2, 0, 0.4)
  }
  private reach(): number {
    const c = this.view?.car,
      xs = this.view?.bodies.map(b => b.box.centre[0]) ?? [0]
    return c ? c.rear - c.front : Math.max(1.5, Math.max(...xs) - Math.min(...xs))
  }
  private draw(): void {
    if (this.asked) return
    this.asked = requestAnimationFrame(() => {
      this.asked = 0
      clearTimeout(this.rest)
      if (this.scans.coarse(true)) this.rest = setTimeout(this.drawWhole, REST)
      this.renderer.render(this.scene, this.camera)
      this.hooks.labels(this.labels())
    })
  }
  /** Once nothing has moved for a while. */
  private readonly drawWhole = (): void => {
    this.scans.coarse(false)
    this.renderer.render(this.scene, this.camera)
  }
  private labels(): readonly Label[] {
    const { clientWidth: w, clientHeight: h } = this.canvas,
      place = new Vector3()
    const all = [...this.bodies].flatMap(([name, mesh]) => {
      place.copy(mesh.position).project(this.camera)
      return place.z > 1 ? [] : [{ name, x: ((place.x + 1) / 2) * w, y: ((1 - place.y) / 2) * h, far: place.z }]
    })
    // The chosen one first, then the nearest: a name that would lie on another is left out.
    const more = this.look?.layers.mass ? NAME.withMass : 0
    const first = (l: (typeof all)[number]): number => (l.name === this.look?.chosen ? -1 : l.far)
    return all
      .sort((a, b) => first(a) - first(b))
      .reduce<Label[]>((shown, l) => (shown.some(s => meet(s, l, more)) ? shown : [...shown, l]), [])
  }

  private ray(e: PointerEvent): Raycaster {
    const r = this.canvas.getBoundingClientRect(),
      ray = new Raycaster()
    ray.setFromCamera(
      new Vector2(((e.clientX - r.left) / r.width) * 2 - 1, 1 - ((e.clientY - r.top) / r.height) * 2),
      this.camera as Camera,
    )
    return ray
  }
  private readonly down = (e: PointerEvent): void => {
    if (this.hooks.picking()) {
      this.pressed = { x: e.clientX, y: e.clientY }
      return
    }
    const hit = this.ray(e).intersectObjects([...this.bodies.values()], false)[0],
      name = hit?.object.userData['name'] as string | undefined
    this.hooks.choose(name)
    if (!hit || name === undefined || !this.hooks.mayMove()) return
    // Level with the ground; with Shift upright, facing whoever looks.
    const normal = e.shiftKey ? new Vector3().subVectors(this.camera.position, hit.point).setZ(0).normalize() : new Vector3(0, 0, 1)
    this.drag = {
      name,
      plane: new Plane().setFromNormalAndCoplanarPoint(normal, hit.point),
      from: hit.point.clone(),
      start: hit.object.position.clone(),
    }
    this.controls.enabled = false
    this.canvas.setPointerCapture(e.pointerId)
  }
  private readonly moved = (e: PointerEvent): void => this.follow(e, false)
  private readonly up = (e: PointerEvent): void => {
    const { pressed } = this
    this.pressed = undefined
    // Turning the car while picking is no pick.
    if (pressed && e.type === 'pointerup' && Math.hypot(e.clientX - pressed.x, e.clientY - pressed.y) < STILL) {
      const { origin, direction } = this.ray(e).ray
      this.hooks.sight([origin.x, origin.y, origin.z], [direction.x, direction.y, direction.z])
    }
    this.follow(e, true)
    this.drag = undefined
    this.controls.enabled = true
  }
  private follow(e: PointerEvent, done: boolean): void {
    const { drag } = this
    if (!drag) return
    const at = this.ray(e).ray.intersectPlane(drag.plane, new Vector3())
    if (!at) return
    const to = drag.start.clone().add(at.sub(drag.from))
    const [x, y, z] = [to.x, to.y, to.z].map(v => Math.round(v / SNAP) * SNAP) as [number, number, number]
    if (x === drag.start.x && y === drag.start.y && z === drag.start.z) return
    this.put(drag.name, [x, y, z])
    this.hooks.move(drag.name, [x, y, z], done)
  }
}
