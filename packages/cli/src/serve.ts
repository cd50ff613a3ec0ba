import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { Refusal } from '@ampwright/workbench'
import type { Terminal } from './terminal.ts'

export type Serving = { data?: string; port?: number; open?: boolean }

const PORT = 4747
/** How many ports after the usual one are tried. */
const TRIED = 20
const NODE = [20, 19] as const
const beside = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url))

/** Serves the workbench until it is told to stop. Store and server are loaded here and nowhere else. */
export async function serve({ data, port, open }: Serving, t: Terminal): Promise<void> {
  needNode(process.versions.node)
  const { dataFolder, startServer } = await import('@ampwright/server')
  const folder = dataFolder(data)
  const start = (at: number): ReturnType<typeof startServer> =>
    startServer({ data: folder, port: at, samples: beside('samples'), web: beside('packages/app/dist'), log: 'file' })
  const running = port === undefined ? await firstFree(start) : await start(port)
  t.out(`Ampwright is at ${running.url}`)
  t.out(`Data folder: ${folder}`)
  t.out('Only this machine can reach it. Stop it with Ctrl-C.')
  if (open) show(running.url)
  const signal = await stopped()
  await running.close()
  t.out(`Stopped (${signal}). Everything is saved.`)
}

export function needNode(version: string): void {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  if (major < NODE[0] || (major === NODE[0] && minor < NODE[1]))
    throw new Refusal(`serve: this is Node.js ${version}; ${NODE.join('.')} or newer is needed. Install it and run npm ci once more.`)
}

/** The usual port, or the next that no other program has. */
async function firstFree<T>(start: (port: number) => Promise<T>): Promise<T> {
  for (let port = PORT; ; port++) {
    try {
      return await start(port)
    } catch (e) {
      if (!(e instanceof Refusal && /^Port \d+ is taken/.test(e.message)) || port >= PORT + TRIED) throw e
    }
  }
}

const stopped = (): Promise<string> =>
  new Promise(resolve => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve(signal))
  })

/** Hands the address to the system's own browser; where that fails, the address stands on the screen. */
function show(url: string): void {
  const [command, ...args] =
    process.platform === 'darwin' ? ['open', url] : process.platform === 'win32' ? ['cmd', '/c', 'start', '', url] : ['xdg-open', url]
  const child = spawn(command as string, args, { stdio: 'ignore', detached: true })
  child.on('error', () => {})
  child.unref()
}
