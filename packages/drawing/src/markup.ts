type Attributes = Readonly<Record<string, string | number | undefined>>

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }
/** Text for XML: reserved characters escaped, control characters that XML cannot hold left out. */
export const escaped = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones XML 1.0 forbids
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '').replace(/[&<>"]/g, c => ESCAPES[c] as string)

/** A pixel to a tenth: finer cannot be seen. */
export function pixel(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing was given the coordinate ${value}; coordinates are finite numbers`)
  return String(Math.round(value * 10) / 10 + 0)
}

/** One element; attributes that are undefined are left out, numbers are pixels. */
export function element(name: string, attributes: Attributes, ...inside: readonly string[]): string {
  const list = Object.entries(attributes)
    .flatMap(([key, v]) => (v === undefined ? [] : [` ${key}="${typeof v === 'number' ? pixel(v) : escaped(v)}"`]))
    .join('')
  return inside.length === 0 ? `<${name}${list}/>` : `<${name}${list}>${inside.join('')}</${name}>`
}
