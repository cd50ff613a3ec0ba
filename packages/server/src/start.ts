import { createServer, type Server } from 'node:http'
import { openStore, type Store, StoreFault, type StoreOptions } from '@ampwright/store'
import { Refusal } from '@ampwright/workbench'
import { appOf } from './app.ts'
import { clearedPassing } from './job-record.ts'
import { judge, judgeWorkshop } from './judge.ts'
import { logFile } from './log-file.ts'
import { DEMO, type SampleCar, samplesIn, sampleWorkshop } from './samples.ts'

export type Starting = {
  /** The data folder; made where it is not there. */
  readonly data: string
  /** The port; 0 for any that is free. */
  readonly port: number
  /** Folder of the sample cars. */
  readonly samples: string
  /** Folder of the built app. */
  readonly web?: string
  /** Takes the lines of the log, each one JSON object; `file` puts them into the data folder; without it nothing is logged. */
  readonly log?: 'file' | { write(line: string): void }
  /** The clock [ms since 1970]. */
  readonly now?: () => number
} & Pick<StoreOptions, 'mostPages'>

export type Running = { readonly url: string; readonly port: number; close(): Promise<void> }

const HOUR = 3_600_000
/** How long an answer under way is waited for when the server ends [ms]. */
const PATIENCE = 2000

/**
 * Starts the server on this machine alone. Gives where it is reached and the way to end it. Throws one clear message (`Refusal`)
 * where the data folder or the port cannot be used.
 */
export async function startServer(o: Starting): Promise<Running> {
  try {
    return await started(o)
  } catch (e) {
    throw e instanceof StoreFault ? new Refusal(e.message) : e
  }
}

async function started(o: Starting): Promise<Running> {
  const now = o.now ?? Date.now
  const warnings = new Map<'copy' | 'purge', string>()
  let log: { write(line: string): void; close?(): void } | undefined = typeof o.log === 'object' ? o.log : undefined
  // What is not as it should be, until it is again.
  const warn = (of: 'copy' | 'purge', message: string): void => {
    warnings.set(of, message)
    log?.write(`${JSON.stringify({ level: 40, time: now(), msg: message })}\n`)
  }
  const store = openStore({
    folder: o.data,
    judge,
    judgeWorkshop,
    now,
    warn: m => warn('copy', m),
    well: () => warnings.delete('copy'),
    ...(o.mostPages === undefined ? {} : { mostPages: o.mostPages }),
  })
  if (o.log === 'file') log = logFile(o.data)
  let purging: NodeJS.Timeout | undefined, second: Server | undefined
  try {
    const passing = clearedPassing(o.data, now())
    const samples = samplesIn(o.samples),
      demo = samples.find(s => s.sample === DEMO)
    if (store.isUnused() && demo) begin(store, demo, o.samples)

    let port = o.port
    const more = { ...(o.web === undefined ? {} : { web: o.web }), ...(log === undefined ? {} : { log }) }
    const app = await appOf({
      ...more,
      store,
      samples,
      passing,
      now,
      port: () => port,
      warning: () => [...warnings.values()].join(' ') || null,
    })
    try {
      await app.listen({ host: '127.0.0.1', port: o.port })
      const address = app.server.address()
      port = typeof address === 'object' && address ? address.port : o.port
      second = await alsoOn(
        '::1',
        port,
        createServer((request, response) => app.routing(request, response)),
      )
    } catch (e) {
      await app.close()
      throw portRefusal(e, o.port)
    }
    purging = setInterval(() => purge(store, m => (m === null ? warnings.delete('purge') : warn('purge', m))), HOUR)
    purging.unref()
    return {
      url: `http://localhost:${port}/`,
      port,
      async close() {
        clearInterval(purging)
        // Answers under way are waited for, but not for ever.
        const late = setTimeout(() => [app.server, second].forEach(s => s?.closeAllConnections()), PATIENCE)
        await Promise.all([app.close(), new Promise(resolve => (second ? second.close(resolve) : resolve(undefined)))])
        clearTimeout(late)
        store.close()
        log?.close?.()
      },
    }
  } catch (e) {
    clearInterval(purging)
    store.close()
    throw e
  }
}

/** What a data folder starts with: the demo car, and the workshop it stands in. */
function begin(store: Store, demo: SampleCar, samples: string): void {
  const made = store.make({ text: demo.text, files: demo.files, what: 'the demo conversion' }),
    shelf = made.ok ? sampleWorkshop(samples, { id: made.id, name: demo.name }) : undefined
  if (shelf !== undefined) store.beginWorkshop(shelf, 'the workshop of the demo')
}

/** The same under the other name of this machine. Machines without it do without; another program there would be taken for this one. */
const alsoOn = (host: string, port: number, server: Server): Promise<Server | undefined> =>
  new Promise((resolve, reject) => {
    server.once('error', (e: NodeJS.ErrnoException) => (e.code === 'EADDRINUSE' ? reject(e) : resolve(undefined)))
    server.listen({ host, port }, () => resolve(server))
  })

function purge(store: Store, told: (message: string | null) => void): void {
  try {
    store.purge()
    told(null)
  } catch (e) {
    told(`What was deleted thirty days ago could not be taken out. ${e instanceof StoreFault ? e.message : String(e)}`)
  }
}

function portRefusal(e: unknown, port: number): unknown {
  const { code } = e as NodeJS.ErrnoException
  if (code === 'EADDRINUSE') return new Refusal(`Port ${port} is taken by another program. Choose another with --port N.`)
  if (code === 'EACCES') return new Refusal(`Port ${port} may not be used by you. Choose one above 1023 with --port N.`)
  return e
}
