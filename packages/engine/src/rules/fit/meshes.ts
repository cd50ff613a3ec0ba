import { type MeshedShape, meshes } from '../../studies/fit/meshes.ts'
import { type PlacedShape, places, shapesOf } from '../../studies/fit/places.ts'
import { MESH_OFF } from '../../studies/fit/stands-as.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { type Gap, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { FITTING, pathOf, wordAt } from './shapes.ts'

export const meshesAsLargeAsSaid = rule({
  id: 'meshes-as-large-as-said',
  title: 'The mesh of each part is as large as its sides say',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    const meshed = shapesOf(m).flatMap(([name, b]) => (isGap(b.mesh) ? [] : [name]))
    if (meshed.length === 0) return doesNotApply('no part has a mesh', ['fit.bodies'])
    const answer = ask(places),
      found = ask(meshes)
    return meshed.map((item): Judgement => {
      const about = [`${pathOf(item)}.mesh`],
        stands = isGaps(answer) ? answer : (answer.shapes[item] as PlacedShape | Gaps)
      if (isGaps(stands)) return { item, about, says: 'Its mesh is not held against its sides yet: they are not known.', missing: stands }
      if (isGaps(found)) return { item, about, says: 'Its mesh is not held against its sides yet.', missing: found }
      return judged(found.shapes.find(s => s.name === item) as MeshedShape, about)
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'fit.bodies.motor.mesh', now: 'attachments/lapwing-motor.stl' },
      { path: 'fit.bodies.motor.length', now: '335 mm' },
    ],
    item: 'motor',
  },
})

function judged({ name: item, off, sides, fault, open }: MeshedShape, about: readonly string[]): Judgement {
  if (fault !== undefined)
    return {
      item,
      about,
      says: 'Its mesh cannot be read: {fault}. Its box stands for it.',
      slots: { fault: wordAt(`${pathOf(item)}.mesh#fault`, 'fault', fault) },
      missing: gapOf(item, 'mesh that can be read'),
      remedies: [{ do: 'act', says: 'Save the mesh anew, or put another file in its place.' }],
    }
  if (!off || !sides)
    return { item, about, says: 'Its mesh is being measured.', missing: { ...gapOf(item, 'extent of the mesh'), why: 'being measured' } }
  return {
    item,
    about: [...about, pathOf(item)],
    found: off,
    side: 'at most',
    limit: MESH_OFF,
    says: open
      ? 'Its mesh is off its sides by {found}, at most {limit} is that of the same part; where it is off by more, its box stands for it. The mesh is open: what lies inside it is not noticed.'
      : 'Its mesh is off its sides by {found}, at most {limit} is that of the same part; where it is off by more, its box stands for it.',
    remedies: [
      {
        do: 'set',
        says: 'Take length, width and height from the mesh. Only where the mesh is of this very part and its unit is known.',
        sets: (['length', 'width', 'height'] as const).map((side, i) => ({
          path: `${pathOf(item)}.${side}`,
          // Files state lengths to the tenth of a millimetre.
          to: { value: Math.round((sides[i] as number) * 1e4) / 1e4, kind: 'length' },
        })),
      },
      { do: 'act', says: 'Put right length, width and height, the unit of the mesh, or its axes; or take the mesh of this very part.' },
    ],
  }
}
const gapOf = (shape: string, label: string): Gap => ({ gap: true, path: `${pathOf(shape)}.mesh`, label, until: 'any time' })
