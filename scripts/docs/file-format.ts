import { type Leaf, type Node, SECTIONS, WORKSHOP_SECTIONS } from '@ampwright/conversion'
import { KINDS } from '@ampwright/engine'

/** docs/file-format.md: every section and key of a conversion and of a workshop, from the schema itself. */
export function fileFormat(): string {
  return `${[HEAD, ...sections(SECTIONS, '##'), WORKSHOP, ...sections(WORKSHOP_SECTIONS, '###')].join('\n')}\n`
}
const sections = (of: Readonly<Record<string, Node>>, mark: string): readonly string[] =>
  Object.entries(of).flatMap(([name, node]) => [
    `${mark} \`${name}\`\n`,
    ...('says' in node && node.says ? [`${node.says}\n`] : []),
    '| key | what | accepted | known |',
    '|---|---|---|---|',
    ...rows(name, node),
    '',
  ])

function rows(path: string, node: Node): string[] {
  switch (node.is) {
    case 'group':
      return Object.entries(node.fields).flatMap(([key, n]) => rows(`${path}.${key}`, n))
    case 'map':
      return [
        `| \`${path}.*\` | ${node.label}: one entry for each ${node.entry}, under a short name${node.says ? `. ${node.says}` : ''} | | |`,
        ...rows(`${path}.*`, node.of),
      ]
    case 'variants':
      return [
        `| \`${path}.${node.by}\` | which kind of ${node.label} | ${Object.keys(node.of)
          .map(k => `\`${k}\``)
          .join(', ')} | |`,
        ...Object.entries(node.of).flatMap(([kind, g]) =>
          Object.entries(g.fields).flatMap(([key, n]) =>
            rows(`${path}.${key}`, n).map(r => r.replace(/^\| (`[^`]+`) \| /, `| $1 (${kind}) | `)),
          ),
        ),
      ]
    default:
      return [`| \`${path}\` | ${node.label}${node.says ? `. ${node.says}` : ''} | ${accepted(node)} | ${known(node)} |`]
  }
}
function accepted(leaf: Leaf): string {
  switch (leaf.is) {
    case 'quantity': {
      const bounds = [leaf.least === undefined ? '' : `from ${leaf.least}`, leaf.most === undefined ? '' : `to ${leaf.most}`]
          .filter(Boolean)
          .join(' '),
        { label, unit } = KINDS[leaf.kind]
      return `${label}${bounds ? ` (${bounds}${unit === '1' ? '' : ` ${unit}`})` : ''}`
    }
    case 'choice':
      return leaf.oneOf.map(w => `\`${w}\``).join(', ')
    case 'date':
      return leaf.coarse ? 'a date, `2027-04-15`, or a month or year' : 'a date, `2027-04-15`'
    case 'reference':
      return `a name in ${leaf.to.map(t => `\`${t}\``).join(' or ')}`
    case 'part':
      return `a part of the catalogue, \`class-name@revision\`${leaf.classes.length ? ` (${leaf.classes.join(', ')})` : ''}${
        leaf.fills
          ? `; fills ${Object.keys(leaf.fills)
              .map(f => `\`${f}\``)
              .join(' and ')}`
          : ''
      }`
    case 'tyre':
      return 'a size marking, `185/60 R14 82H`'
    case 'file':
      return `a file beside the conversion: ${leaf.format}`
    default:
      return 'words'
  }
}
const known = (leaf: Leaf): string =>
  [
    leaf.until && leaf.until !== 'any time' ? leaf.until : '',
    leaf.measure ? `${leaf.measure.tool} (${leaf.measure.accuracy})` : '',
    leaf.is === 'quantity' && leaf.assume ? 'a class value is assumed while missing' : '',
  ]
    .filter(Boolean)
    .join('; ')

const HEAD = `# The conversion file

Generated from the schema by \`npm run docs\`. A conversion is one text file, \`NAME.conversion.yaml\`: facts and decisions, never results.
\`ampwright schema\` prints a JSON Schema of it for editors.

**Text.** A small part of YAML: block maps, one-line \`{ a: 1 kg, b: 2 m }\` maps and \`[a, b]\` rows, plain or quoted values, \`|\` only under \`note:\`.
No anchors, tags or tabs; up to 2 MB, 32 levels, 5 000 keys. Every set of things is a map keyed by a short readable name. \`note:\` may stand in any group.
Comments and spacing are yours: an edit changes the bytes it names and no others.

**Quantities.** \`1180 ± 10 kg (measured, wheel scales 12 May)\`: a number, an optional ± (half-width that should hold 19 times in 20), a unit of the
right kind, and an optional origin: measured, datasheet, standard or assumed, with a remark. \`±\` may be a percentage. A comma is a decimal comma;
\`1,180 kg\` is refused because it can be read in two ways. Inside \`{ }\` a comma must be quoted. Numbers without a unit are accepted only for ratios, shares and counts.

**Missing values.** Leave a value out, or its key empty, and what needs it stays unanswered and asks for it. Where the table below says that a class value is
assumed, it stands in, marked *assumed*, with its spread; \`--strict\` leaves the gap.

**Axes.** x behind the front axle, y to the right of the centre line, z above the ground.

**Parts.** \`part:\` names a record of the catalogue; it fills the fields of its group that you leave out, each marked with where it came from.

**Versions.** \`schema: 1\` stands at the top. An older file is migrated by numbered steps; a newer one is refused with one message.
`

const WORKSHOP = `# The workshop file

\`NAME.workshop.yaml\` holds what belongs to the workshop and to no single car; so far its own parts. Text, quantities, dates and messages are those of
the conversion file; \`samples/ferry-lane.workshop.yaml\` is one, and \`ampwright shelf FILE\` lists it. A \`part:\` says here which record a piece is and fills
nothing: a price that is not typed is not known. The workbench keeps the file in its database and rewrites a copy beside the conversions,
\`conversions/own.workshop.yaml\` in the data folder.
`
