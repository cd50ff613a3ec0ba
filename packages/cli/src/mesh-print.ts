import type { System } from '@ampwright/conversion'
import type { MeshesTask } from '@ampwright/engine'
import type { CarMeshes } from '@ampwright/geometry'
import { count, place, type Row, saysIn } from './scan-print.ts'
import { colours, columns, type Terminal } from './terminal.ts'

/** Meshes of parts for people: what each is, and how near pairs come by them. */
export function printMeshes({ meshes }: MeshesTask, { survey, parts }: CarMeshes, t: Terminal, system: System): void {
  const k = colours(t),
    says = saysIn(system),
    part = (title: string, rows: readonly Row[]): void => {
      t.out(k.bold(title))
      for (const line of columns(rows, t.width, 2)) t.out(line)
      t.out('')
    }
  for (const { shape, file } of meshes) {
    const found = survey.shapes[shape]
    if (!found) continue
    const { fault, triangles, closed, sides } = found
    part(
      `${shape}: ${file}`,
      fault === undefined
        ? [
            ['Triangles', count(triangles)],
            ['Skin', closed ? 'closed' : 'open: what lies inside it is not noticed'],
            ['Extent', sides.map(s => says(s, 'length')).join(' × ')],
            ['Stands for it', parts.has(shape) ? 'the mesh' : 'its box: the mesh is not as large as its sides say'],
          ]
        : [['Not read', `${fault}; its box stands for it`]],
    )
  }
  const pairs = Object.entries(survey.pairs)
  if (pairs.length > 0)
    part(
      'Between parts',
      pairs.map(
        ([name, { apart, at }]): Row => [
          name,
          apart === 0 ? `▲ run into each other at ${place(at, says)}` : `${says(apart, 'length')}, nearest at ${place(at, says)}`,
        ],
      ),
    )
}
