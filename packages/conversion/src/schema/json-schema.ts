import { KINDS } from '@ampwright/engine'
import { SECTIONS } from '../sections/sections.ts'
import type { Leaf, Node } from './field.ts'

type Json = Readonly<Record<string, unknown>>

/** The published JSON Schema (2020-12) of the conversion file, for editors: keys, choices and what each field means. Units are checked on reading. */
export function jsonSchema(schema: number): Json {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Ampwright conversion',
    description: 'One car being converted. Quantities are text with a unit, such as `1180 ± 10 kg (measured, wheel scales)`.',
    type: 'object',
    additionalProperties: false,
    required: ['schema'],
    properties: {
      schema: { const: schema, description: 'Version of the file format.' },
      ...properties(SECTIONS),
      note: { type: 'string' },
    },
  }
}

const properties = (fields: Readonly<Record<string, Node>>): Json =>
  Object.fromEntries(Object.entries(fields).map(([key, node]) => [key, ofNode(node)]))

function ofNode(node: Node): Json {
  switch (node.is) {
    case 'group':
      return {
        type: ['object', 'null'],
        title: node.label,
        ...(node.says ? { description: node.says } : {}),
        additionalProperties: false,
        properties: { ...properties(node.fields), note: { type: 'string' } },
      }
    case 'map':
      return {
        type: ['object', 'null'],
        title: node.label,
        ...(node.says ? { description: node.says } : {}),
        properties: { note: { type: 'string' } },
        additionalProperties: ofNode(node.of),
      }
    case 'variants':
      return {
        title: node.label,
        type: 'object',
        required: [node.by],
        oneOf: Object.entries(node.of).map(([kind, g]) => ({
          title: g.label,
          additionalProperties: false,
          required: [node.by],
          properties: { [node.by]: { const: kind }, ...properties(g.fields), note: { type: 'string' } },
        })),
      }
    default:
      return ofLeaf(node)
  }
}

function ofLeaf(leaf: Leaf): Json {
  const description = [leaf.label, leaf.says, leaf.until && leaf.until !== 'any time' ? `Known ${leaf.until} only.` : undefined]
    .filter(Boolean)
    .join('. ')
  const empty = { type: 'null' }
  switch (leaf.is) {
    case 'choice':
      return { description, anyOf: [{ enum: leaf.oneOf }, empty] }
    case 'quantity': {
      const bare = KINDS[leaf.kind].unit === '1' && leaf.kind !== 'slope'
      return {
        description: `${description}. A ${KINDS[leaf.kind].label}${bare ? '' : ' with its unit'}.`,
        type: bare ? ['string', 'number', 'null'] : ['string', 'null'],
      }
    }
    case 'date':
      return {
        description,
        anyOf: [{ type: 'string', pattern: leaf.coarse ? '^\\d{4}(-\\d{2}(-\\d{2})?)?$' : '^\\d{4}-\\d{2}-\\d{2}$' }, empty],
      }
    case 'reference':
      return { description: `${description}: a name in ${leaf.to.join(' or ')}`, type: ['string', 'null'] }
    case 'part':
      return {
        description: `${description}: class-name@revision${leaf.fills ? `; fills ${Object.keys(leaf.fills).join(', ')}` : ''}`,
        type: ['string', 'null'],
      }
    default:
      return { description, type: ['string', 'null'] }
  }
}
