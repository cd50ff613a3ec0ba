import type { Running } from '@ampwright/server'

type Event = { readonly event: string; readonly data: any }

/** Listens to a server; `next` waits for the next event. */
export async function listening(server: Running) {
  const stop = new AbortController(),
    answer = await fetch(new URL('/api/live', server.url), { signal: stop.signal }),
    reader = (answer.body as ReadableStream<Uint8Array>).getReader()
  let had = ''
  async function next(): Promise<Event> {
    for (;;) {
      const end = had.indexOf('\n\n')
      if (end >= 0) {
        const block = had.slice(0, end)
        had = had.slice(end + 2)
        const [, event] = /^event: (.*)$/m.exec(block) ?? [],
          [, data] = /^data: (.*)$/m.exec(block) ?? []
        if (event !== undefined && data !== undefined) return { event, data: JSON.parse(data) }
        continue
      }
      const { value, done } = await reader.read()
      if (done) return { event: 'end', data: null }
      had += Buffer.from(value).toString()
    }
  }
  return { answer, next, stop: () => stop.abort() }
}
