import { quoted } from '../issue.ts'
import { refuse } from './mesh-file.ts'
import { Words } from './words.ts'

/** How a value is stored, and how many bytes it takes in a binary file. */
export const PLY_TYPES = {
  int8: 1,
  uint8: 1,
  int16: 2,
  uint16: 2,
  int32: 4,
  uint32: 4,
  float32: 4,
  float64: 8,
} as const
export type PlyType = keyof typeof PLY_TYPES

const NAMES: ReadonlyMap<string, PlyType> = new Map([
  ...(Object.keys(PLY_TYPES) as PlyType[]).map(t => [t, t] as const),
  ['char', 'int8'],
  ['uchar', 'uint8'],
  ['short', 'int16'],
  ['ushort', 'uint16'],
  ['int', 'int32'],
  ['uint', 'uint32'],
  ['float', 'float32'],
  ['double', 'float64'],
])

/** A property of an element; a list says by `counted` how its length is stored. */
export type PlyProperty = { readonly name: string; readonly type: PlyType; readonly counted?: PlyType }
export type PlyElement = { readonly name: string; readonly count: number; readonly properties: PlyProperty[] }
export type PlyFormat = 'ascii' | 'binary_little_endian' | 'binary_big_endian'
export type PlyHeader = { readonly format: PlyFormat; readonly elements: readonly PlyElement[] }

const LONGEST_HEADER = 100_000
const FORMATS: readonly string[] = ['ascii', 'binary_little_endian', 'binary_big_endian'] satisfies PlyFormat[]

/** The header of a PLY file. `words` stands behind it afterwards, at the first byte of the data. Throws MeshRefusal. */
export function plyHeader(words: Words): PlyHeader {
  if (!words.inLine() || !words.is('ply')) refuse(words.where(), 'this is no PLY file', words.found(), 'ply')
  let format: PlyFormat | undefined
  const elements: PlyElement[] = []
  while (words.nextLine()) {
    if (words.from > LONGEST_HEADER)
      refuse(words.where(), 'the header is too long', `more than ${LONGEST_HEADER} bytes`, 'end_header before that')
    if (!words.inLine()) continue
    if (words.is('format')) format = formatOf(words)
    else if (words.is('element')) elements.push(elementOf(words))
    else if (words.is('property')) elements.at(-1)?.properties.push(propertyOf(words))
    else if (words.text() === 'end_header') {
      if (!format) return refuse(words.where(), 'the header names no format', 'none', FORMATS.join(', '))
      words.nextLine()
      return { format, elements }
    } else if (!words.is('comment') && words.text() !== 'obj_info')
      refuse(words.where(), 'a line of the header is not known', words.found(), 'format, element, property, comment or end_header')
  }
  return refuse(words.where(), 'the header never ends', 'the end of the file', 'end_header')
}

function formatOf(words: Words): PlyFormat {
  const there = words.inLine(),
    name = words.text()
  if (!there || !FORMATS.includes(name)) refuse(words.where(), 'the format is not accepted', words.found(), FORMATS.join(', '))
  return name as PlyFormat
}

function elementOf(words: Words): PlyElement {
  const name = words.inLine() ? words.text() : '',
    there = words.inLine(),
    count = there ? words.whole() : Number.NaN
  if (!(count >= 0)) refuse(words.where(), 'an element has no number', words.found(), 'how many there are')
  return { name, count, properties: [] }
}

function propertyOf(words: Words): PlyProperty {
  const type = (): PlyType => {
    const there = words.inLine(),
      found = there ? NAMES.get(words.text()) : undefined
    return found ?? refuse(words.where(), 'a property has a type that is not known', words.found(), [...NAMES.keys()].join(', '))
  }
  const mark = words.to
  const isList = words.inLine() && words.is('list')
  if (!isList) words.to = mark
  const counted = isList ? type() : undefined,
    stored = type()
  if (counted === 'float32' || counted === 'float64')
    refuse(words.where(), 'a list is counted by a number with a fraction', quoted(counted), 'a whole type such as uchar')
  const name = words.inLine() ? words.text() : refuse(words.where(), 'a property has no name', words.found(), 'a name')
  return { name, type: stored, ...(counted ? { counted } : {}) }
}
