import type { PackArrangement, PackTask } from './pack-types.ts'

/** Modules of each form one after the other in a string. */
export type Way = { readonly main: number; readonly other: number }
export type PackMixedTask = PackTask & { readonly mix: NonNullable<PackTask['mix']> }

/** The ways to make a string of two forms of module that so many strings leave enough modules for: most of the main form first. One at least is of the main form: it is what the pack is made of. */
export function waysToMix({ mix, have = Infinity }: PackMixedTask, strings: number): readonly Way[] {
  const { main, other, string } = mix.groups,
    out: Way[] = []
  for (let others = 0; others * other <= string; others++) {
    const mains = (string - others * other) / main
    if (Number.isInteger(mains) && mains >= 1 && mains * strings <= have && others * strings <= mix.have)
      out.push({ main: mains, other: others })
  }
  return out
}

/** Most strings, of those wanted, that there are modules for in whole groups of one form; one less than the fewest where there are not even those. */
function mostStrings(task: PackMixedTask): number {
  let p = task.strings.least - 1
  while (p < task.strings.most && waysToMix(task, p + 1).length > 0) p++
  return p
}

/** Whether both forms are one: then nothing is to be mixed. */
const alike = ({ module, mix }: PackMixedTask): boolean =>
  mix.groups.main === mix.groups.other && mix.other.mass === module.mass && mix.other.size.every((s, i) => s === module.size[i])

/**
 * The task with one form of module, where that comes to the same: nothing of the other form is there, or a string takes none of it, or both are alike. Undefined where two are
 * to be mixed.
 */
export function withOneForm(task: PackTask): PackTask | undefined {
  const { mix, have = Infinity, ...rest } = task
  if (!mix) return task
  const mixed = { ...task, mix },
    series = mix.groups.string / mix.groups.main,
    whole = Number.isInteger(series)
  if (whole && alike(mixed)) return { ...rest, series, strings: { ...task.strings, most: mostStrings(mixed) } }
  // What fewer strings cannot take, more cannot either.
  if (whole && waysToMix(mixed, task.strings.least).every(w => w.other === 0)) return { ...rest, series, have }
  return undefined
}

/** Where both forms are alike they are searched as one: which of the modules are of which form, in whole groups, as many of the main form as there are. */
export function inBothForms({ mix, have = Infinity }: PackTask, one: PackArrangement): PackArrangement {
  if (!mix) return one
  const series = one.modules / one.strings,
    main = Math.min(series, Math.floor(have / one.strings))
  let left = main * one.strings
  const boxes = one.boxes.map(b => ({ ...b, modules: b.modules.map(m => (left-- > 0 ? m : { ...m, other: true as const })) }))
  return { ...one, boxes, inString: { main, other: series - main } }
}

export function checkMix({ mix, have }: PackTask): void {
  const whole = (name: string, n: number, least: number): void => {
    if (!Number.isInteger(n) || n < least) throw new RangeError(`packing: ${name} must be a whole number of at least ${least}, found ${n}`)
  }
  if (have !== undefined && have !== Infinity) whole('modules there are', have, 0)
  if (!mix) return
  if (mix.have !== Infinity) whole('modules of the other form there are', mix.have, 0)
  whole('cell groups of a module', mix.groups.main, 1)
  whole('cell groups of a module of the other form', mix.groups.other, 1)
  whole('cell groups of a string', mix.groups.string, 1)
  if (!(mix.other.mass > 0))
    throw new RangeError(`packing: the mass of a module of the other form must be above 0, found ${mix.other.mass}`)
}
