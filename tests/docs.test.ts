import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { pages } from '../scripts/docs/pages.ts'
import { withOutput } from '../scripts/docs/shown-output.ts'
import { root } from './cars.ts'

describe('generated pages', () => {
  const wanted = pages()
  it.each(Object.keys(wanted))('docs/%s is what `npm run docs` writes', file => {
    let stands = ''
    try {
      stands = readFileSync(join(root, 'docs', file), 'utf8')
    } catch {
      // said below
    }
    expect(stands === wanted[file], `docs/${file} is not up to date: run npm run docs`).toBe(true)
  })
  it('holds no path of a machine and no host name', () => {
    for (const [file, text] of Object.entries(wanted)) expect(text, file).not.toMatch(/\/(home|work|tmp|root|Users)\/|https?:\/\//)
  })
})

it('README.md shows what its commands really print', async () => {
  const readme = readFileSync(join(root, 'README.md'), 'utf8')
  expect(await withOutput(readme, root)).toBe(readme)
})
