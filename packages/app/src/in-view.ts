/** How long a change may be on its way before the page says so [ms]: a mark that stays for a blink only keeps the processor from what is waited for. */
const BLINK = 50

/** What pages show of something that changes, replaced whole at every change. */
export class InView<T extends object> {
  private readonly heard = new Set<() => void>()
  private waiting: ReturnType<typeof setTimeout> | undefined
  private state: T

  constructor(first: T) {
    this.state = first
  }
  get now(): T {
    return this.state
  }
  /** Whether something has changed that no page was told of yet. */
  get isWaiting(): boolean {
    return this.waiting !== undefined
  }
  put(some: Partial<T>): void {
    this.state = { ...this.state, ...some }
    this.tell()
  }
  /** Puts what will soon be otherwise again: pages are told with the next change, or after a blink. */
  putQuietly(some: Partial<T>): void {
    this.state = { ...this.state, ...some }
    this.waiting ??= setTimeout(() => this.tell(), BLINK)
  }
  subscribe(f: () => void): () => void {
    this.heard.add(f)
    return () => this.heard.delete(f)
  }
  private tell(): void {
    clearTimeout(this.waiting)
    this.waiting = undefined
    for (const f of this.heard) f()
  }
}
