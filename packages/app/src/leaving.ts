/** What happens when a window is put aside, when its page is left, and when the page comes back as it was. */
export type Leaving = { readonly hidden: () => void; readonly left: () => void; readonly back: () => void }

/** Tells of the page being left, in every way a browser has; gives the way to stop. */
export function atLeaving({ hidden, left, back }: Leaving): () => void {
  const seen = (): void => {
      if (document.visibilityState === 'hidden') hidden()
    },
    shown = (e: PageTransitionEvent): void => {
      if (e.persisted) back()
    }
  document.addEventListener('visibilitychange', seen)
  addEventListener('pagehide', left)
  addEventListener('pageshow', shown)
  return () => {
    document.removeEventListener('visibilitychange', seen)
    removeEventListener('pagehide', left)
    removeEventListener('pageshow', shown)
  }
}
