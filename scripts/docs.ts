// Writes the generated pages of docs/. A test compares them with what stands there.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { description } from '@ampwright/server'
import { pages } from './docs/pages.ts'
import { withOutput } from './docs/shown-output.ts'

const root = dirname(dirname(fileURLToPath(import.meta.url))),
  folder = join(root, 'docs')
for (const [file, text] of Object.entries(pages())) {
  writeFileSync(join(folder, file), text)
  console.log(`docs/${file}: ${text.split('\n').length} lines`)
}

const api = await description()
writeFileSync(join(folder, 'openapi.json'), api)
console.log(`docs/openapi.json: ${api.split('\n').length} lines`)

const readme = join(root, 'README.md')
writeFileSync(readme, await withOutput(readFileSync(readme, 'utf8'), root))
