import { readFileSync, statSync } from 'node:fs'
import { isAbsolute, join, normalize } from 'node:path'
import type { FileDatum } from '@ampwright/conversion'
import { fileDatum, mostBytes, refused } from '@ampwright/workbench'

/** Reads files beside a conversion: tables of numbers and tracks. Each file is read and checked once. */
export function attachmentsIn(folder: string): (name: string, format: string) => FileDatum | undefined {
  const kept = new Map<string, FileDatum | undefined>()
  return (name, format) => {
    const key = `${format}\n${name}`
    if (!kept.has(key)) kept.set(key, read(folder, name, format))
    return kept.get(key)
  }
}

function read(folder: string, name: string, format: string): FileDatum | undefined {
  if (isAbsolute(name) || normalize(name).startsWith('..'))
    return refused('a path that leaves the folder of the conversion', 'a file in that folder or below it')
  const path = join(folder, name),
    stat = statSync(path, { throwIfNoEntry: false })
  if (!stat?.isFile()) return undefined
  if (stat.size > mostBytes(name)) return refused(`${stat.size} bytes`, `at most ${mostBytes(name)} bytes`)
  const bytes = readFileSync(path)
  return fileDatum(bytes, format)
}
