/** Once the next frame stands on the screen; at once on a page nobody sees, which paints none. */
export const painted = (): Promise<void> =>
  document.hidden
    ? Promise.resolve()
    : new Promise(done => {
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel()
          port1.addEventListener('message', () => {
            port1.close()
            done()
          })
          port1.start()
          port2.postMessage(0)
        })
      })
