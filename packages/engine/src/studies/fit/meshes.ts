import { meshOffSides } from '../../fitting/surveyed.ts'
import type { SurveyedMesh } from '../../model/survey.ts'
import type { Figure } from '../../working/value.ts'
import { study } from '../study.ts'
import { placedShapes } from './mesh-task.ts'
import { meshFact } from './pairs.ts'
import type { PlacedShape } from './places.ts'
import { meshNow } from './stands-as.ts'

/** The mesh of a shape against the sides it states; `off` and `sides`, those of the mesh [m], are missing while it is being measured, or where it cannot be read. */
export type MeshedShape = {
  readonly name: string
  readonly off?: Figure
  readonly sides?: SurveyedMesh['sides']
  readonly fault?: string
  readonly open?: true
}

/** Whether meshes are what they stand for. */
export const meshes = study({
  id: 'mesh',
  stage: 'fit',
  asks: 'Is the mesh of each part as large as its sides say?',
  reads: (m, ask) => ({
    shapes: placedShapes(m, ask).flatMap(shape => (shape.mesh ? [{ shape, found: meshNow(shape, m.meshes?.shapes) ?? null }] : [])),
  }),
  answer: ({ shapes }, make): { readonly shapes: readonly MeshedShape[] } => ({
    shapes: shapes.map(({ shape: s, found: f }): MeshedShape => {
      const shape = s as PlacedShape,
        found = f as SurveyedMesh | null,
        { name } = shape
      if (!found) return { name }
      if (found.fault !== undefined) return { name, fault: found.fault }
      const [length, width, height] = shape.sides,
        extent = (axis: 0 | 1 | 2, what: string) => meshFact(shape, `extent ${what}`, `e_${axis + 1}`, found.sides[axis], 'm'),
        off = make.work(
          'off',
          meshOffSides,
          { along: extent(0, 'along'), across: extent(1, 'across'), up: extent(2, 'up'), length, width, height },
          { item: name, label: `Mesh of ${name} against its sides` },
        )
      return { name, off, sides: found.sides, ...(found.closed ? {} : { open: true as const }) }
    }),
  }),
})
