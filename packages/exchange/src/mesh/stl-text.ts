import type { TriangleMesh } from '@ampwright/engine'
import { MeshBuilder } from './mesh-builder.ts'
import { refuse } from './mesh-file.ts'
import { Words } from './words.ts'

/** A mesh from an STL file in text; several solids become one. Throws MeshRefusal. */
export function stlText(bytes: Uint8Array): TriangleMesh {
  const words = new Words(bytes),
    mesh = new MeshBuilder(() => words.where())
  while (words.next()) {
    expect(words, true, 'solid')
    // The rest of the line is a name, which may be anything.
    words.nextLine()
    facets(words, mesh)
    words.nextLine()
  }
  return mesh.mesh('a solid without facets')
}

/** Every facet up to `endsolid`. */
function facets(words: Words, mesh: MeshBuilder): void {
  while (words.next()) {
    if (words.is('endsolid')) return
    expect(words, true, 'facet')
    expect(words, words.next(), 'normal')
    // A normal may be nan for a triangle without area: it is not read.
    for (let i = 0; i < 3; i++) words.next()
    expect(words, words.next(), 'outer')
    expect(words, words.next(), 'loop')
    for (let i = 0; i < 3; i++) {
      expect(words, words.next(), 'vertex')
      mesh.corner(words.coordinate(words.next()), words.coordinate(words.next()), words.coordinate(words.next()))
    }
    expect(words, words.next(), 'endloop')
    expect(words, words.next(), 'endfacet')
    mesh.triangle(mesh.corners - 3, mesh.corners - 2, mesh.corners - 1)
  }
  refuse(words.where(), 'the file is cut off', 'the end of the file', 'endsolid')
}

function expect(words: Words, there: boolean, word: string): void {
  if (!there) refuse(words.where(), 'the file is cut off', 'the end of the file', word)
  if (!words.is(word)) refuse(words.where(), `this is no STL text: ${word} does not stand where it must`, words.found(), word)
}
