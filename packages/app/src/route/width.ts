import { type RefObject, useEffect, useRef, useState } from 'react'

/** The width of what is on the screen [px]: a drawing made to it keeps its lettering readable on a phone. */
export function useWidth<T extends HTMLElement>(): readonly [RefObject<T | null>, number] {
  const ref = useRef<T>(null),
    [width, setWidth] = useState(320)
  useEffect(() => {
    const { current } = ref
    if (!current) return
    const look = new ResizeObserver(() => setWidth(Math.max(240, Math.round(current.clientWidth))))
    look.observe(current)
    return () => look.disconnect()
  }, [])
  return [ref, width]
}
