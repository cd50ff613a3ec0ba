// Writes the generated pages of docs/. A test compares them with what stands there.
import { writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { pages } from './docs/pages.ts'

const folder = join(dirname(dirname(fileURLToPath(import.meta.url))), 'docs')
for (const [file, text] of Object.entries(pages())) {
  writeFileSync(join(folder, file), text)
  console.log(`docs/${file}: ${text.split('\n').length} lines`)
}
