import { readQuantity } from '@ampwright/conversion'
import { type Kind, type OrientedBox, SQUARE, turned, type Vector } from '@ampwright/engine'
import type { Pick } from '@ampwright/geometry'
import { Refusal } from '@ampwright/workbench'

const PLACE = "'450,0,600 mm': behind the front axle, to the right, up"

/** Three numbers of a text, between commas or semicolons. */
const parts = (text: string): readonly string[] => text.split(/[,;]/).map(x => x.trim())

/** Refuses a value of an option in one line. */
const wrong = (option: string, text: string, found: string, accepted: string): never => {
  throw new Refusal(`scan: ${option} ${text}: found ${found}; accepted ${accepted}`)
}

function quantity(option: string, whole: string, text: string, kind: Kind, accepted: string): number {
  const read = readQuantity(text, kind)
  return read.ok ? read.quantity.value : wrong(option, whole, `${read.problem.found}, ${read.problem.why}`, accepted)
}

/** A length such as `15 mm`, above 0 unless `orNone`. */
export function lengthFrom(option: string, text: string, orNone = false): number {
  const value = quantity(option, text, text, 'length', "a length such as '15 mm'")
  return value > 0 || (orNone && value === 0) ? value : wrong(option, text, text, "a length above 0, such as '15 mm'")
}

/** Three lengths; the unit behind the last one holds for those without. `unit` stands in where even the last has none. */
function lengths(option: string, whole: string, text: string, accepted: string, list = parts(text), unit?: string): Vector {
  const last = /^[-+−\d.\s]*(.*)$/u.exec(list.at(-1) ?? '')?.[1]?.trim() || unit
  if (list.length !== 3 || list.some(x => x === '')) return wrong(option, whole, `${list.length} of three lengths`, accepted)
  if (!last) return wrong(option, whole, 'no unit', accepted)
  const [x, y, z] = list.map(x => quantity(option, whole, /[a-z"'′″]$/i.test(x) ? x : `${x} ${last}`, 'length', accepted))
  return [x as number, y as number, z as number]
}

/** A place in the car. */
export const placeFrom = (option: string, text: string): Vector => lengths(option, text, text, PLACE)

/** A point of the scan as in its file, and the place it has in the car. */
export function pickFrom(text: string): Pick {
  const [left = '', right, more] = text.split('='),
    accepted = "'12.5,3,-8 = 450,320,610 mm': a point as in the file = its place in the car"
  const onScan = parts(left).map(x => (x === '' ? Number.NaN : Number(x)))
  if (right === undefined || more !== undefined) return wrong('--pick', text, 'no single =', accepted)
  if (onScan.length !== 3 || !onScan.every(Number.isFinite))
    return wrong('--pick', text, `${left.trim() || 'nothing'} before the =`, accepted)
  return { onScan: onScan as unknown as Vector, inCar: lengths('--pick', text, right, accepted) }
}

/** Two corners of limits, in any order. */
export function limitsFrom(text: string): { readonly low: Vector; readonly high: Vector } {
  const accepted = "'-600,-740,140 .. 720,740,820 mm': two corners"
  const [from, to, more] = text.split('..')
  if (from === undefined || to === undefined || more !== undefined) return wrong('--within', text, 'no two corners', accepted)
  const unit = /[a-z"'′″]+\s*$/i.exec(to)?.[0].trim(),
    [a, b] = [lengths('--within', text, from, accepted, parts(from), unit), lengths('--within', text, to, accepted)]
  const pick = (least: boolean): Vector =>
    [0, 1, 2].map(i => (least ? Math.min : Math.max)(a[i] as number, b[i] as number)) as unknown as Vector
  return { low: pick(true), high: pick(false) }
}

/** A box by its sides, its middle, and how it is turned about x, y and z one after the other. */
export function boxFrom(text: string): OrientedBox {
  const accepted = "'600 x 400 x 250 mm at 300,0,500 mm', with 'turned 0,0,30' behind it for degrees about x, y and z"
  const read = /^(.+?)\s+at\s+(.+?)(?:\s+turned\s+(.+))?$/.exec(text.trim())
  if (!read) return wrong('--box', text, 'no sides and place', accepted)
  const [, sides = '', place = '', turns] = read,
    [a, b, c] = lengths('--box', text, sides, accepted, sides.split(/\s*[x×]\s*/))
  if (!(a > 0 && b > 0 && c > 0)) return wrong('--box', text, `sides ${sides}`, 'sides above 0')
  const angles = turns === undefined ? [0, 0, 0] : parts(turns.replace(/\s*(?:°|deg)$/, '')).map(Number)
  if (angles.length !== 3 || !angles.every(Number.isFinite)) return wrong('--box', text, `turned ${turns}`, accepted)
  const axes = angles.reduce<OrientedBox['axes']>((axes, degrees, i) => turned(i as 0 | 1 | 2, (degrees * Math.PI) / 180, axes), SQUARE)
  return { centre: lengths('--box', text, place, accepted), half: [a / 2, b / 2, c / 2], axes }
}
