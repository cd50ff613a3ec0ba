import { type Conversion, isUsable, type LookUps, readConversion, type TextGroup, type TextNode } from '@ampwright/conversion'
import { isGap, type Model, type Value } from '@ampwright/engine'
import { lookUps } from '../look-ups.ts'
import { issuesAsRefusal } from './refused.ts'

/** The file a set of concepts is made for: its donor car and its brief count, what was planned before is put aside. */
export type Base = { readonly text: string; readonly conversion: Conversion; readonly model: Model; readonly lookUps: LookUps }

/** Reads the file; one with errors is refused whole, every problem named. */
export function baseOf(text: string, attachments?: LookUps['attachments']): Base {
  const ups = lookUps(attachments),
    conversion = readConversion(text, { lookUps: ups })
  if (!isUsable(conversion)) throw issuesAsRefusal(conversion.issues)
  return { text, conversion, model: conversion.model, lookUps: ups }
}

/** What stands at a path of the file, if anything. */
export function nodeAt({ conversion }: Base, ...keys: readonly string[]): TextNode | undefined {
  let node: TextNode | undefined = conversion.text.tree
  for (const key of keys) node = node?.kind === 'group' ? node.entries.get(key)?.node : undefined
  return node
}
export const namesAt = (base: Base, ...keys: readonly string[]): readonly string[] => {
  const node = nodeAt(base, ...keys)
  return node?.kind === 'group' ? [...(node as TextGroup).entries.keys()] : []
}

/** A space that becomes free: where the middle of what stood there is, and its height where known. */
export type Space = { readonly where: 'engine bay' | 'tank space'; readonly x: Value; readonly z?: Value }

const ENGINE = /engine|motor/i
const TANK = /^tank|(fuel|petrol|diesel).*tank/i
/** Spaces that what comes out leaves free, as far as their place is known: where the engine was first, then where the tank was. */
export function spaces({ donor }: Model): readonly Space[] {
  const found = (names: RegExp, where: Space['where']): readonly Space[] => {
    const item = Object.entries(donor.removed).find(([name, i]) => names.test(name) && !isGap(i.x))?.[1]
    return item && !isGap(item.x) ? [{ where, x: item.x, ...(isGap(item.z) ? {} : { z: item.z }) }] : []
  }
  return [...found(ENGINE, 'engine bay'), ...found(TANK, 'tank space')]
}
