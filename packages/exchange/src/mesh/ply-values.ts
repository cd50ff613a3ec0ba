import { PLY_TYPES, type PlyType } from './ply-header.ts'
import { refuse } from './mesh-file.ts'
import type { Words } from './words.ts'

/** Gives the values of a PLY file one after the other. `where` says where the one just given stands. */
export type PlyValues = { readonly next: (type: PlyType) => number; readonly where: () => string }

/** Values as words between blanks and line ends. Throws MeshRefusal. */
export const wordValues = (words: Words): PlyValues => ({
  next: () => {
    if (!words.next()) refuse(words.where(), 'the file is cut off', 'the end of the file', 'the values its header announces')
    return words.number()
  },
  where: () => `${words.where()} (${words.found()})`,
})

/** Values as bytes from a place on. Throws MeshRefusal. */
export function byteValues(bytes: Uint8Array, from: number, little: boolean): PlyValues {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let at = from,
    start = from
  return {
    next: type => {
      start = at
      at += PLY_TYPES[type]
      if (at > bytes.length)
        refuse(`byte ${bytes.length}`, 'the file is cut off', `${bytes.length} bytes`, 'the values its header announces')
      switch (type) {
        case 'float32':
          return view.getFloat32(start, little)
        case 'float64':
          return view.getFloat64(start, little)
        case 'int32':
          return view.getInt32(start, little)
        case 'uint32':
          return view.getUint32(start, little)
        case 'int16':
          return view.getInt16(start, little)
        case 'uint16':
          return view.getUint16(start, little)
        case 'int8':
          return view.getInt8(start)
        case 'uint8':
          return view.getUint8(start)
      }
    },
    where: () => `byte ${start}`,
  }
}
