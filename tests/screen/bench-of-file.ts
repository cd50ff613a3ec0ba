import { afterAll, beforeAll, onTestFinished } from 'vitest'
import { type Bench, openBench } from './browser.ts'

/** One bench for all tests of a file, there from its first hook on. A window a test opens is closed when that test ends: left open, it would work out every edit of the tests after it. */
export function benchOfFile(): Bench {
  let open: Bench | undefined
  const bench = (): Bench => {
    if (open === undefined) throw new Error('the bench is open from the first hook to the last')
    return open
  }
  beforeAll(async () => {
    open = await openBench()
  }, 120_000)
  afterAll(async () => {
    await open?.close()
  }, 60_000)
  return {
    get url() {
      return bench().url
    },
    get browser() {
      return bench().browser
    },
    get complaints() {
      return bench().complaints
    },
    get demo() {
      return bench().demo
    },
    async window(size) {
      const page = await bench().window(size)
      try {
        onTestFinished(() => page.context().close())
      } catch {
        // Opened in a hook: it belongs to the whole file.
      }
      return page
    },
    text: id => bench().text(id),
    close: () => bench().close(),
  }
}
