import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

// In development the server runs beside this one: `npx ampwright serve --port 4747`.
export default defineConfig({
  plugins: [react()],
  resolve: { conditions: ['source', 'module', 'browser', 'import', 'default'] },
  worker: { format: 'es' },
  build: { outDir: 'dist', target: 'es2023', sourcemap: false, chunkSizeWarningLimit: 1200 },
  server: { proxy: { '/api': 'http://127.0.0.1:4747' } },
})
