import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../../../tests/cars.ts'
import { needNode } from './serve.ts'

const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'ampwright-'))
const started = (...args: string[]) => {
  const child = spawn(
      process.execPath,
      ['--conditions', 'source', '--import', 'tsx', join(root, 'packages/cli/src/main.ts'), 'serve', ...args],
      { cwd: root },
    ),
    said = { out: '', err: '' }
  child.stdout.on('data', part => (said.out += part))
  child.stderr.on('data', part => (said.err += part))
  return { child, said }
}
/** Waits until it says its last word on starting. Gives the address. */
async function ready({ child, said }: ReturnType<typeof started>): Promise<string> {
  while (!said.out.includes('Ctrl-C')) {
    if (child.exitCode !== null) throw new Error(said.err)
    await new Promise(resolve => setTimeout(resolve, 20))
  }
  return /http:\S+/.exec(said.out)?.[0] ?? ''
}
const ended = async (child: ChildProcess): Promise<number | null> => (child.exitCode ?? (await once(child, 'exit'))[0]) as number | null

describe('serve', () => {
  it('says where it is and what it keeps where, ends cleanly when told to, and is clean again after it was killed', async () => {
    const data = join(emptyFolder(), 'data'),
      first = started('--data', data, '--port', '0'),
      url = await ready(first)
    expect(first.said.out).toContain(`Data folder: ${data}\n`)
    const [{ id, revision }] = (await (await fetch(`${url}api/conversions`)).json()) as [{ id: string; revision: number }]
    expect(revision).toBe(1)
    const edits = [{ path: 'brief.seats', was: '2', now: '1' }]
    await fetch(`${url}api/conversions/${id}/edits`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ edits }),
    })
    first.child.kill('SIGKILL')
    await ended(first.child)

    const second = started('--data', data, '--port', '0'),
      again = await ready(second)
    expect(await (await fetch(`${again}api/conversions/${id}`)).json()).toMatchObject({ revision: 2 })
    second.child.kill('SIGTERM')
    expect(await ended(second.child)).toBe(0)
    expect(second.said.out).toContain('Stopped (SIGTERM). Everything is saved.')
    expect(existsSync(join(data, 'ampwright.sqlite-wal'))).toBe(false)
    for (const line of readFileSync(join(data, 'ampwright.log'), 'utf8').trimEnd().split('\n')) expect(() => JSON.parse(line)).not.toThrow()
  })
  it('ends with code 2 and one clear message where it cannot start', async () => {
    const file = join(emptyFolder(), 'file')
    writeFileSync(file, '')
    const { child, said } = started('--data', file)
    expect(await ended(child)).toBe(2)
    expect([said.out, said.err]).toEqual(['', `${file} is a file, not a folder. Choose another place with --data DIR.\n`])
  })
  it('needs a Node.js it was tried with', () => {
    expect(() => needNode('18.20.0')).toThrow('this is Node.js 18.20.0; 20.19 or newer is needed')
    expect(() => needNode('20.18.9')).toThrow('20.19 or newer')
    for (const version of ['20.19.0', '20.20.2', '24.0.0']) expect(() => needNode(version)).not.toThrow()
  })
  it('alone loads store and server: nothing else on the command line waits for them', () => {
    const seen = new Set<string>()
    const walk = (file: string): void => {
      if (seen.has(file)) return
      seen.add(file)
      const text = readFileSync(file, 'utf8')
      for (const [, target = ''] of text.matchAll(/(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s+['"]([^'"]+)['"]/g)) {
        expect(target, file).not.toMatch(/@ampwright\/(store|server)|better-sqlite3|fastify/)
        if (target.startsWith('.')) walk(join(dirname(file), target))
      }
    }
    walk(join(root, 'packages/cli/src/main.ts'))
    expect([...seen].some(file => file.endsWith('serve.ts'))).toBe(true)
  })
})
