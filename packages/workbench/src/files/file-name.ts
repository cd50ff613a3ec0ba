/** Most bytes of a table or track beside a conversion, and of a scan: two million triangles come to 100 MB as binary STL, to more as text. */
export const MOST_FILE_BYTES = 100_000_000
export const MOST_SCAN_BYTES = 250_000_000
const SCANS = /\.(stl|obj|ply|glb|gltf)$/i
/** Whether a name says that a file is a mesh. */
export const isScanName = (name: string): boolean => SCANS.test(name)
/** Most bytes of a file of this name. */
export const mostBytes = (name: string): number => (isScanName(name) ? MOST_SCAN_BYTES : MOST_FILE_BYTES)
const LONGEST = 120

/** What is wrong with a file, with its place: nothing is kept of it. */
export type FileFault = { readonly place: string; readonly what: string; readonly found: string; readonly accepted: string }

/** What keeps a file out before it is looked into: its name and its size; nothing where both will do. */
export function nameFault(name: string, size: number): FileFault | undefined {
  if (!/^[\p{L}\p{N}_][\p{L}\p{N}._-]*$/u.test(name) || name.length > LONGEST || name.endsWith('.'))
    return {
      place: 'name',
      what: 'a name no file beside a conversion may have',
      found: `«${name.slice(0, LONGEST)}»`,
      accepted: `letters, digits, dot, dash and underscore, at most ${LONGEST}, beginning with a letter, a digit or an underscore`,
    }
  if (!/\.(csv|gpx|tsv|txt)$/i.test(name) && !isScanName(name))
    return {
      place: 'name',
      what: 'a kind of file that is not read',
      found: `«${name}»`,
      accepted: 'a table (.csv, .tsv, .txt), a track (.gpx) or a scan (.stl, .obj, .ply, .glb, .gltf)',
    }
  if (size > mostBytes(name))
    return {
      place: 'size',
      what: 'the file is too large',
      found: `${Math.ceil(size / 1e6)} MB`,
      accepted: isScanName(name)
        ? `at most ${MOST_SCAN_BYTES / 1e6} MB: save the scan as binary STL, PLY or GLB, or make it coarser`
        : `at most ${MOST_FILE_BYTES / 1e6} MB`,
    }
  return undefined
}

/** A name that will do, as near to a given one as can be. */
export const tidyName = (name: string): string =>
  name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/-+\./g, '.')
    .replace(/^[.-]+|[.-]+$/g, '')
    .slice(-LONGEST)
