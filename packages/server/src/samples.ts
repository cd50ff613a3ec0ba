import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { applyEdits, readConversion, readWorkshop } from '@ampwright/conversion'
import { lookUps } from '@ampwright/workbench'

export type SampleCar = {
  readonly sample: string
  readonly name: string
  readonly about: string
  readonly text: string
  readonly files: Readonly<Record<string, Uint8Array>>
}

export const DEMO = 'lapwing'
const END = '.conversion.yaml'

/** The sample cars of a folder, each with the files it names. */
export function samplesIn(folder: string): readonly SampleCar[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder)
    .filter(file => file.endsWith(END))
    .sort()
    .map(file => sampleOf(folder, file))
}

/** The text of the sample workshop of a folder, its pieces kept for the car of this name bound to its conversion; undefined where there is none. */
export function sampleWorkshop(folder: string, car: { readonly name: string; readonly id: string }): string | undefined {
  const file = existsSync(folder) ? readdirSync(folder).find(f => f.endsWith('.workshop.yaml')) : undefined
  if (file === undefined) return undefined
  const text = readFileSync(join(folder, file), 'utf8'),
    kept = readWorkshop(text).shelf.filter(p => p.reserved?.car === car.name),
    bound = applyEdits(
      text,
      kept.map(p => ({ path: ['shelf', p.key, 'reserved', 'conversion'], now: car.id })),
    )
  return bound.ok ? bound.text : text
}

function sampleOf(folder: string, file: string): SampleCar {
  const text = readFileSync(join(folder, file), 'utf8'),
    files = new Map<string, Uint8Array>()
  const named = lookUps(name => {
    if (existsSync(join(folder, name))) files.set(name, readFileSync(join(folder, name)))
    return undefined
  })
  const car = readConversion(text, { lookUps: named }).text.tree?.entries.get('car')?.node
  return {
    sample: file.slice(0, -END.length),
    name: car?.kind === 'value' ? car.source : '',
    about: /^# (.*)/.exec(text)?.[1] ?? '',
    text,
    files: Object.fromEntries(files),
  }
}
