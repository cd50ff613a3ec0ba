import { displayUnit, type System } from '@ampwright/conversion'
import {
  type Chart,
  csvOf,
  type Drawing,
  drawingsOf,
  type Picture,
  type Readout,
  type Scale,
  type Scene,
  type SceneBody,
  sceneOf,
  type Windows,
} from '@ampwright/drawing'
import { type Assessment, gapOf } from '@ampwright/engine'
import { planDxf, shownNumber } from '@ampwright/workbench'

/** A drawing there is to see. */
export type DrawingLine = Pick<Drawing, 'id' | 'kind' | 'label' | 'item'> & {
  /** It can go to a drawing program. */
  readonly plan?: true
}
export type FileKind = 'svg' | 'csv' | 'dxf'
/** A drawing as it goes to the screen. */
export type Drawn = {
  readonly svg: string
  readonly text: string
  readonly label: string
  readonly width: number
  readonly height: number
  /** Along which a cursor runs, or a handle is moved. */
  readonly scale?: Scale
  readonly cursor: boolean
}

/** A scene as it goes to the screen: what each shape weighs is told. */
export type SceneView = Omit<Scene, 'bodies'> & { readonly bodies: readonly (SceneBody & { readonly weighs: string | undefined })[] }

/** The drawings of an assessment; what was drawn last is kept, for a cursor to read from. */
export class Drawings {
  private of: Assessment | undefined
  private all: readonly Drawing[] = []
  private readonly drawn = new Map<string, Picture>()

  list(a: Assessment): readonly DrawingLine[] {
    return this.known(a).map(({ id, kind, label, item, plan }) => ({
      id,
      kind,
      label,
      ...(item === undefined ? {} : { item }),
      ...(plan ? { plan: true } : {}),
    }))
  }
  tellsHowSure(a: Assessment, id: string): boolean {
    return this.known(a).some(d => d.id === id && d.tellsHowSure)
  }
  private known(a: Assessment): readonly Drawing[] {
    if (a === this.of) return this.all
    this.of = a
    this.drawn.clear()
    return (this.all = drawingsOf(a))
  }
  draw(a: Assessment, id: string, width: number, system: System): Drawn | undefined {
    const picture = this.pictured(a, id, width, system)
    if (picture === undefined) return undefined
    this.drawn.set(id, picture)
    const { svg, text, label, height } = picture
    const scale = 'scales' in picture ? (picture as Chart).scales.x : 'scale' in picture ? (picture as Windows).scale : undefined
    return { svg, text, label, width: picture.width, height, cursor: 'readout' in picture, ...(scale ? { scale } : {}) }
  }
  private pictured(a: Assessment, id: string, width: number, system: System, standalone = false): Picture | undefined {
    return this.known(a)
      .find(d => d.id === id)
      ?.draw({
        width,
        standalone,
        units: (kind, greatest) => {
          const { unit, fromSI } = displayUnit(kind, system, greatest)
          return { unit, fromSI }
        },
      })
  }
  read(id: string, pixel: number): Readout | undefined {
    const picture = this.drawn.get(id)
    return picture && 'readout' in picture ? (picture as Chart).readout(pixel) : undefined
  }
  /** The car as a scene, with masses as they are told. */
  scene(a: Assessment, system: System): SceneView | undefined {
    const scene = sceneOf(a)
    if (!scene) return undefined
    const weighs = (kg: number | undefined): string | undefined => (kg === undefined ? undefined : shownNumber(kg, 'mass', 'kg', system))
    return { ...scene, bodies: scene.bodies.map(b => ({ ...b, weighs: weighs(b.mass) })) }
  }
  /** Air between two shapes as they stand in a scene. */
  gap(a: Assessment, one: string, other: string, system: System): string | undefined {
    const bodies = sceneOf(a)?.bodies ?? [],
      [p, q] = [one, other].map(name => bodies.find(b => b.name === name))
    if (!p || !q) return undefined
    // Where one of them has a mesh, air is that of the mesh.
    const figure = a.figures.get(`gap.between@${[one, other].sort().join(' and ')}`),
      byMesh = figure?.because.formula.card.id === 'surveyed-air' ? (figure.value as number) : undefined
    return shownNumber(byMesh ?? gapOf(p.box, q.box), 'length', 'm', system)
  }
  file(a: Assessment, id: string, as: FileKind, width: number, system: System): string | undefined {
    if (as === 'dxf') {
      const drawing = this.known(a).find(d => d.id === id)
      return drawing?.plan && planDxf(drawing.label, drawing.plan())
    }
    const picture = this.pictured(a, id, width, system, true)
    return picture && (as === 'csv' ? csvOf(picture) : picture.svg)
  }
}
