import { createServer } from 'node:http'
import { readFileSync, existsSync, readdirSync } from 'node:fs'
import { join, extname } from 'node:path'
import { applyEdits } from '@ampwright/conversion'
const dist = process.cwd() + '/packages/app/dist', samples = process.cwd() + '/samples'
const T: any = { '.js': 'text/javascript', '.css': 'text/css', '.html': 'text/html', '.woff2': 'font/woff2' }
const S = (n: string) => readFileSync(join(samples, n + '.conversion.yaml'), 'utf8')
const cs: any = { demo: { name: 'Lapwing roadster', revs: ['', S('lapwing')] } }
const live = new Set<any>()
const body = (q: any): Promise<any> => new Promise(d => { let b = ''; q.on('data', (c: any) => b += c); q.on('end', () => d(b ? JSON.parse(b) : {})) })
createServer(async (q, r) => {
  const u = new URL(q.url!, 'http://x'), p = u.pathname
  const json = (o: any, c = 200) => { r.writeHead(c, { 'content-type': 'application/json' }); r.end(JSON.stringify(o)) }
  const files = readdirSync(join(samples,'attachments')).map(n => 'attachments/' + n)
  if (p === '/api/live') { r.writeHead(200, { 'content-type': 'text/event-stream' }); r.write(':\n\n'); live.add(r); return }
  if (p === '/api/samples') return json({ samples: ['lapwing', 'wren', 'badger', 'otter'].map(id => ({ id, name: id })) })
  if (p === '/api/conversions' && q.method === 'GET') return json({ conversions: Object.entries(cs).map(([id, c]: any) => ({ id, name: c.name, revision: c.revs.length - 1, at: '' })) })
  if (p === '/api/conversions') { const b = await body(q), id = 'c' + Object.keys(cs).length; cs[id] = { name: b.sample ?? 'new', revs: ['', b.sample ? S(b.sample) : b.text] }; return json({ id }) }
  const m = /^\/api\/conversions\/(\w+)(?:\/(\w+))?(?:\/(.+))?/.exec(p)
  if (m) {
    const c = cs[m[1]!]; if (!c) return json({ message: 'There is no such conversion.' }, 404)
    const head = c.revs.length - 1
    if (!m[2]) return json({ id: m[1], name: c.name, revision: head, text: c.revs[head], files: files.map(n => ({ name: n, hash: '' })) })
    if (m[2] === 'files') { r.end(readFileSync(join(samples, decodeURIComponent(m[3]!)))); return }
    const b = await body(q)
    const add = (t: string) => { c.revs.push(t); for (const l of live) l.write(`data: ${JSON.stringify({ id: m[1], revision: head + 1 })}\n\n`); json({ revision: head + 1, text: t }) }
    if (m[2] === 'edits') { const a = applyEdits(c.revs[head], b.edits); return a.ok ? add(a.text) : json({ message: 'no' }, 422) }
    if (m[2] === 'undo') return add(c.revs[b.revision - 1])
  }
  const f = join(dist, p)
  if (extname(p) && existsSync(f)) { r.writeHead(200, { 'content-type': T[extname(p)] ?? 'text/plain' }); return r.end(readFileSync(f)) }
  r.writeHead(200, { 'content-type': 'text/html' }); r.end(readFileSync(join(dist, 'index.html')))
}).listen(+(process.env.PORT ?? 4999), '127.0.0.1')
