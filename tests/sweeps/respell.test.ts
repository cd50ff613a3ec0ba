import { pathText, readQuantity, readText, type TextGroup, type TextNode } from '@ampwright/conversion'
import { type Fact, type Kind, kindOf } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, said, textOf, typedFacts } from '../cars.ts'
import { sampled, seed } from './sampled.ts'

const OTHER: Partial<Record<Kind, readonly string[]>> = {
  mass: ['g', 't'],
  length: ['cm', 'm'],
  distance: ['m'],
  area: ['cm2'],
  volume: ['ml'],
  speed: ['m/s'],
  force: ['kN'],
  torque: ['N·m'],
  power: ['W'],
  energy: ['Wh'],
  'rotational speed': ['rpm'],
  temperature: ['K'],
  voltage: ['mV', 'kV'],
  current: ['mA'],
  charge: ['mAh'],
  resistance: ['µΩ'],
  time: ['ms'],
  duration: ['s'],
  share: ['%'],
  pressure: ['kPa'],
}
const FACTOR: Readonly<Record<string, number>> = {
  g: 1e-3,
  t: 1e3,
  cm: 1e-2,
  m: 1,
  cm2: 1e-4,
  ml: 1e-6,
  'm/s': 1,
  kN: 1e3,
  N·m: 1,
  W: 1,
  Wh: 3600,
  rpm: Math.PI / 30,
  K: 1,
  mV: 1e-3,
  kV: 1e3,
  mA: 1e-3,
  mAh: 3.6,
  µΩ: 1e-6,
  ms: 1e-3,
  s: 1,
  '%': 0.01,
  kPa: 1e3,
}

/** The same quantity in another unit, with a decimal comma. */
function respelled(fact: Fact, turn: number): string | undefined {
  const kind = fact.shows ?? kindOf(fact.unit)
  if (typeof fact.value !== 'number' || !kind || kind === 'count') return undefined
  const units = OTHER[kind]
  if (!units) return undefined
  const unit = units[turn % units.length] as string,
    factor = FACTOR[unit] as number
  const number = (v: number): string => String(Number(v.toPrecision(15))).replace('.', ',')
  const text = `${number(fact.value / factor)}${fact.half === undefined ? '' : ` ± ${number(fact.half / factor)}`} ${unit}${fact.origin && !fact.origin.source ? ` (${fact.origin.how}${fact.origin.note ? `, ${fact.origin.note}` : ''})` : ''}`
  return readQuantity(text, kind).ok ? text : undefined
}

/** Writes a tree again as block text, maps in turned order, with other texts where `other` has them. */
function rewritten(group: TextGroup, other: ReadonlyMap<string, string>, path: readonly string[] = [], indent = ''): string {
  const quoted = (s: string): string => JSON.stringify(s)
  const line = ([key, { node }]: [string, { node: TextNode }]): string => {
    const here = [...path, key]
    if (node.kind === 'group')
      return node.entries.size ? `${indent}${key}:\n${rewritten(node, other, here, `${indent}  `)}` : `${indent}${key}: {}\n`
    if (node.kind === 'value') return `${indent}${key}: ${quoted(other.get(pathText(here)) ?? node.source)}\n`
    return ''
  }
  const entries = [...group.entries] as [string, { node: TextNode }][]
  return [...entries].reverse().map(line).join('')
}

describe.each(CARS)('sweep “respell” over %s', car => {
  it('says the same in other units, with decimal commas and keys in another order', () => {
    const text = textOf(car),
      { conversion, assessment } = assessText(text),
      { tree } = readText(text)
    if (!tree) throw new Error('unreadable sample')
    const turn = seed % 7,
      other = new Map<string, string>()
    for (const f of sampled(typedFacts(conversion), `${car} respell`).length ? typedFacts(conversion) : []) {
      const t = respelled(f, turn)
      if (t !== undefined) other.set(f.path, t)
    }
    expect(other.size).toBeGreaterThan(20)
    const a = said(assessment),
      b = said(assessText(rewritten(tree, other)).assessment),
      wrong: string[] = []
    for (const k of new Set([...a.keys(), ...b.keys()])) {
      const [x, y] = [a.get(k), b.get(k)]
      if (typeof x === 'number' && typeof y === 'number') {
        // A coast-down's linear coefficient is what two much greater ones leave over: it carries their rounding.
        const within = /f1(@|$)/.test(k) ? 1e-11 : 1e-12
        if (!(Object.is(x, y) || Math.abs(x - y) <= within * Math.max(1, Math.abs(x), Math.abs(y)))) wrong.push(`${k}: ${x} and ${y}`)
      } else if (x !== y && !(typeof x === 'string' && typeof y === 'string' && x.includes(';'))) wrong.push(`${k}: ${x} and ${y}`)
    }
    expect(wrong).toEqual([])
  })
})
