import { appendFileSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'

/** One comparison with the outside world. `tolerance` is absolute, in the unit of `expected`. */
export type Check = {
  readonly domain: string
  readonly check: string
  readonly source: string
  readonly mark: 'published' | 'from memory' | 'common practice' | 'independent program' | 'derived'
  readonly expected: number
  readonly obtained: number
  readonly tolerance: number
  readonly unit?: string
  /** Set where a miss is known and said: why the model is not expected to hold there. */
  readonly remark?: string
}

const folder = process.env['AMPWRIGHT_PROOF']

/** Notes a comparison for docs/proof.md and says whether it holds. The test decides what a miss means; the page prints every one. */
export function proven(check: Check): boolean {
  const holds = Math.abs(check.obtained - check.expected) <= check.tolerance
  if (folder) {
    mkdirSync(folder, { recursive: true })
    appendFileSync(join(folder, `${process.pid}.jsonl`), `${JSON.stringify({ ...check, holds })}\n`)
  }
  return holds
}

/** Notes the seed a sweep draws with, for the record of a long run. */
export function seeded(seed: number): void {
  if (!folder) return
  mkdirSync(folder, { recursive: true })
  appendFileSync(join(folder, 'seeds'), `${seed}\n`)
}
