import { hashOf } from './contents.ts'

/** Which revision of which conversion a text was exported from. */
export type Stamp = { readonly id: string; readonly revision: number; readonly hash: string }

const LINE = /(?:^|\r?\n)# Ampwright: conversion ([0-9a-f]{16}), revision (\d{1,9}), ([0-9a-f]{16})[ \t]*(?:\r?\n)*$/

/** A text with a last line that says what it was exported from, so that it can be merged when it comes back. */
export function stamped(text: string, id: string, revision: number): string {
  const gap = text === '' || text.endsWith('\n') ? '' : '\n'
  return `${text}${gap}# Ampwright: conversion ${id}, revision ${revision}, ${hashOf(Buffer.from(text)).slice(0, 16)}\n`
}

/** The text without that line, and what the line said. */
export function unstamped(text: string): { readonly text: string; readonly stamp?: Stamp } {
  const found = LINE.exec(text)
  if (!found) return { text }
  const [line, id = '', revision = '', hash = ''] = found,
    bare = text.slice(0, found.index),
    lineEnd = line.startsWith('\r\n') ? '\r\n' : line.startsWith('\n') ? '\n' : ''
  // The line end before it is the text's own, unless the text had none.
  const whole = bare + lineEnd
  return { text: hashOf(Buffer.from(bare)).startsWith(hash) ? bare : whole, stamp: { id, revision: Number(revision), hash } }
}
