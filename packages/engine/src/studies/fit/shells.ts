import { SHELL_DENSITY, sheetPiece, shellMass } from '../../fitting/shell.ts'
import type { BoxBody, ShellMaterial } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type AnyValue, type Figure, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { shapesOf } from './places.ts'

export type Shell = { readonly sheet: Figure; readonly overhead: Value; readonly box: string }

const boxesOf = (m: Model): readonly (readonly [string, BoxBody])[] =>
  shapesOf(m).flatMap(([name, b]) => (b.kind === 'battery box' ? [[name, b] as const] : []))

/** What the sheet of each battery box weighs, and the pieces it is cut from. */
export const shells = study({
  id: 'shell',
  stage: 'fit',
  asks: 'What does the sheet of the battery boxes weigh, and which pieces is it cut from?',
  reads: m => ({
    boxes: boxesOf(m).map(([name, b]) => ({
      name,
      box: isGap(b.box) ? '' : b.box.value,
      shell: maybe({ length: b.length, width: b.width, height: b.height, wall: b.wall, material: b.material }),
      overhead: maybe(isGap(b.box) ? b.box : (m.pack.boxes[b.box.value]?.overhead ?? { gaps: [] })),
    })),
  }),
  answer: ({ boxes }, make): { readonly shells: Readonly<Record<string, Shell | Gaps>> } => {
    const out: Record<string, Shell | Gaps> = {},
      rows: { name: string; cells: Record<string, AnyValue | number> }[] = [],
      drawn: { name: string; cells: Record<string, AnyValue> }[] = []
    for (const { name, box, shell, overhead } of boxes) {
      if (isGaps(shell)) {
        out[name] = shell
        continue
      }
      const { material, ...sides } = shell as { material: Value<ShellMaterial> } & Record<'length' | 'width' | 'height' | 'wall', Value>
      const sheet = make.work(
        'sheet',
        shellMass,
        { ...sides, density: SHELL_DENSITY[material.value] },
        { item: name, label: `Sheet of ${name}` },
      )
      out[name] = isGaps(overhead) ? overhead : { sheet, overhead: overhead as Value, box }
      const piece = (what: string, count: number, one: Value, other: Value): void => {
        const mass = make.work(
          'piece',
          sheetPiece,
          { one, other, wall: sides.wall, density: SHELL_DENSITY[material.value] },
          { item: `${name}, ${what}`, label: `${name}: one of ${what}` },
        )
        rows.push({ name: `${name}: ${what}`, cells: { count, one, other, wall: sides.wall, material, mass } })
      }
      drawn.push({ name, cells: { ...sides, material } })
      piece('floor and lid', 2, sides.length, sides.width)
      piece('long sides', 2, sides.length, sides.height)
      piece('ends', 2, sides.width, sides.height)
    }
    make.table('cut-list', {
      label: 'Pieces of sheet, outer sizes',
      columns: [
        { key: 'count', label: 'pieces' },
        { key: 'one', label: 'one side', unit: 'm', shows: 'length' },
        { key: 'other', label: 'other side', unit: 'm', shows: 'length' },
        { key: 'wall', label: 'thickness', unit: 'm', shows: 'length' },
        { key: 'material', label: 'material' },
        { key: 'mass', label: 'each weighs', unit: 'kg' },
      ],
      rows,
    })
    const length = (key: string, label: string) => ({ key, label, unit: 'm', shows: 'length' })
    make.table('boxes', {
      label: 'Battery boxes, outer sizes',
      columns: [
        length('length', 'length'),
        length('width', 'width'),
        length('height', 'height'),
        length('wall', 'thickness'),
        { key: 'material', label: 'material' },
      ],
      rows: drawn,
    })
    return { shells: out }
  },
})
