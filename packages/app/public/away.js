// Keeps the pages of the workbench in this browser, so that they open with the server away. Built files carry their content in their name and never
// change; a page itself comes from the server while that answers. What the server is asked (/api) is never kept here.
const SHELF = 'ampwright-1'
const FIRST = ['/', '/mark.svg', '/manifest.webmanifest']

addEventListener('install', event => {
  event.waitUntil(
    caches
      .open(SHELF)
      .then(shelf => shelf.addAll(FIRST))
      .then(() => skipWaiting()),
  )
})
addEventListener('activate', event => {
  event.waitUntil(
    caches
      .keys()
      .then(names => Promise.all(names.filter(n => n !== SHELF).map(n => caches.delete(n))))
      .then(() => clients.claim()),
  )
})
addEventListener('fetch', event => {
  const { request } = event,
    url = new URL(request.url)
  if (request.method !== 'GET' || url.origin !== location.origin || url.pathname.startsWith('/api/')) return
  event.respondWith(url.pathname.startsWith('/assets/') ? kept(request) : fresh(request))
})

async function kept(request) {
  const shelf = await caches.open(SHELF),
    before = await shelf.match(request)
  if (before) return before
  const answer = await fetch(request)
  if (answer.ok) await shelf.put(request, answer.clone())
  return answer
}
async function fresh(request) {
  const shelf = await caches.open(SHELF)
  try {
    const answer = await fetch(request)
    if (answer.ok && request.mode === 'navigate') await shelf.put('/', answer.clone())
    return answer
  } catch (away) {
    const before = (await shelf.match(request)) ?? (request.mode === 'navigate' ? await shelf.match('/') : undefined)
    if (before) return before
    throw away
  }
}
