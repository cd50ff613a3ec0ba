import { fieldAt } from '@ampwright/conversion'

/** What a part named by a key of the file is called: as the schema calls it where it knows the key, else its words. */
export const partCalled = (key: string): string => {
  // Its label there goes on to ask where it is.
  const known = fieldAt(`donor.not-listed.${key}`)?.label.replace(/:.*$/, '')
  return (
    known ??
    key
      .replaceAll('-', ' ')
      .replace(/\bdc dc\b/gi, 'DC-DC')
      .replace(/\b(bms|abs|hv)\b/gi, word => word.toUpperCase())
  )
}

/** What a value at a path is called, with the name of the thing it belongs to. */
export function valueCalled(path: string): string {
  const label = fieldAt(path)?.label,
    [, ...within] = path.split('.').slice(0, -1)
  if (label === undefined) return path
  const of = within.at(-1)
  return of === undefined ? label : `${label} (${partCalled(of)})`
}
