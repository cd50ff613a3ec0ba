export type DxfPoint = readonly [x: number, y: number]
export type DxfLine = { readonly layer: string; readonly from: DxfPoint; readonly to: DxfPoint }
/** One line of words; its foot starts, or with `end` ends, at the place. */
export type DxfText = {
  readonly layer: string
  readonly at: DxfPoint
  readonly height: number
  readonly text: string
  readonly end?: boolean
}
/** A layer and the number of its colour in the palette of drawing programs: 1 red, 3 green, 5 blue, 7 black or white, 8 grey. */
export type DxfLayer = { readonly name: string; readonly colour: number }
export type DxfDrawing = {
  readonly layers: readonly DxfLayer[]
  readonly lines: readonly DxfLine[]
  readonly texts: readonly DxfText[]
  /** One line for whoever opens the file as text, such as the unit. */
  readonly note?: string
}

/**
 * Lines and words as a DXF file of release 12 in ASCII, which every drawing program reads. Numbers are in the unit of the drawing: the format names none.
 *
 * Letters beyond ASCII are written as `\U+0000`. Throws RangeError on a number that is not finite, a layer that is not listed, or a name the format cannot hold.
 * Source: DXF reference of release 12, group codes (from memory).
 */
export function writeDxf({ layers, lines, texts, note }: DxfDrawing): string {
  const named = new Set(layers.map(l => checkedName(l.name)))
  const onLayer = (layer: string): string => {
    if (!named.has(layer)) throw new RangeError(`layer must be one of ${[...named].join(', ')}, found ${layer}`)
    return layer
  }
  return pairs([
    ...(note === undefined ? [] : [[999, words(note)] as const]),
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
    ]),
    ...section('TABLES', [
      [0, 'TABLE'],
      [2, 'LAYER'],
      [70, String(layers.length)],
      ...layers.flatMap(l => [
        [0, 'LAYER'] as const,
        [2, l.name] as const,
        [70, '0'] as const,
        [62, String(l.colour)] as const,
        [6, 'CONTINUOUS'] as const,
      ]),
      [0, 'ENDTAB'],
    ]),
    ...section('ENTITIES', [
      ...lines.flatMap(l => [[0, 'LINE'] as const, [8, onLayer(l.layer)] as const, ...place(10, l.from), ...place(11, l.to)]),
      ...texts.flatMap(t => [
        [0, 'TEXT'] as const,
        [8, onLayer(t.layer)] as const,
        ...place(10, t.at),
        [40, number(t.height)] as const,
        [1, words(t.text)] as const,
        // A text that ends at its place says so, and names the place again.
        ...(t.end ? [[72, '2'] as const, ...place(11, t.at)] : []),
      ]),
    ]),
    [0, 'EOF'],
  ])
}

type Pair = readonly [code: number, value: string]
const pairs = (list: readonly Pair[]): string => list.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('')
const section = (name: string, inside: readonly Pair[]): readonly Pair[] => [[0, 'SECTION'], [2, name], ...inside, [0, 'ENDSEC']]
const place = (code: number, [x, y]: DxfPoint): readonly Pair[] => [
  [code, number(x)],
  [code + 10, number(y)],
  [code + 20, '0'],
]
function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number must be finite, found ${value}`)
  return String(Number(value.toFixed(6)))
}
function checkedName(name: string): string {
  if (!/^[A-Z0-9_$-]{1,31}$/.test(name)) throw new RangeError(`a layer must be named in capitals, digits, _ $ or -, found ${name}`)
  return name
}
/** One line of ASCII. */
const words = (text: string): string =>
  text.replace(/\s+/g, ' ').replace(/[^ -~]/g, c => `\\U+${(c.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`)
