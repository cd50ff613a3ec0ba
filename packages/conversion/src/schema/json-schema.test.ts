import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { CARS, textOf } from '../../../../tests/cars.ts'
import { SCHEMA } from '../conversion.ts'
import { readText } from '../text/read.ts'
import type { Group as TextGroup, TextNode } from '../text/tree.ts'
import { jsonSchema } from './json-schema.ts'

describe('the JSON Schema of the file', () => {
  const schema = new Ajv2020({ allErrors: true, strict: false }).compile(jsonSchema(SCHEMA))
  const plain = (n: TextNode): unknown =>
    n.kind === 'group'
      ? Object.fromEntries([...n.entries].map(([k, e]) => [k, plain(e.node)]))
      : n.kind === 'value'
        ? n.source === ''
          ? null
          : n.source === '1'
            ? 1
            : n.source
        : null
  it.each(CARS)('accepts %s', car => {
    const tree = readText(textOf(car)).tree as TextGroup,
      value = plain(tree) as Record<string, unknown>
    schema({ ...value, schema: 1 })
    expect(schema.errors ?? []).toEqual([])
  })
  it('points at an unknown key and a wrong choice', () => {
    expect(schema({ schema: 1, donor: { wheelbse: '1 m' } })).toBe(false)
    expect(schema({ schema: 1, donor: { 'driven-wheels': 'reer' } })).toBe(false)
  })
})
