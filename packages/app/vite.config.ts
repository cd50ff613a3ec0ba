import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { brotliCompressSync } from 'node:zlib'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'

const DIST = 'dist'

/** Packs each built text once, so that the server sends it packed without work; fonts and pictures are packed already. */
const packed = (): Plugin => ({
  name: 'packed',
  apply: 'build',
  closeBundle() {
    const root = join(import.meta.dirname, DIST)
    for (const name of readdirSync(root, { recursive: true, encoding: 'utf8' }))
      if (/\.(js|css|html|svg|webmanifest)$/.test(name)) writeFileSync(join(root, `${name}.br`), brotliCompressSync(readFileSync(join(root, name))))
  },
})

// In development the server runs beside this one: `npx ampwright serve --port 4747`.
export default defineConfig({
  plugins: [react(), packed()],
  resolve: { conditions: ['source', 'module', 'browser', 'import', 'default'] },
  worker: { format: 'es' },
  build: { outDir: DIST, target: 'es2023', sourcemap: false, chunkSizeWarningLimit: 1200 },
  server: { proxy: { '/api': 'http://127.0.0.1:4747' } },
})
