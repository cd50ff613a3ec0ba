import { type Conversion, type Edit, pathText } from '@ampwright/conversion'

/** A shape stands for one of these and for nothing without it. */
const STANDS_FOR = /^(fit\.bodies\.(?:[^."]+|"(?:[^"\\]|\\.)*"))\.(?:unit|box|part)$/
const at = ({ path }: Edit): string => (typeof path === 'string' ? path : pathText(path))
const within = (path: string, whole: string): boolean => path === whole || path.startsWith(`${whole}.`)

/**
 * What has to go along where these edits take entries out, before them: a shape of a part that goes, with its handles let stand by themselves, and the name of a space that goes;
 * a part of the circuit then asks what it is, and a wire where it goes. What else
 * names an entry, such as a goal its load, is let be: without it, it would mean something else.
 */
export function freed({ references }: Pick<Conversion, 'references'>, edits: readonly Edit[]): readonly Edit[] {
  const going = edits.filter(e => e.now === null).map(at),
    more: string[] = []
  // Shapes that go are named themselves.
  for (let i = 0; i < going.length; i++)
    for (const { path, to, name } of references) {
      const all = [...going, ...more]
      if (!/^(?:fit|high-voltage)\./.test(path) || all.some(p => within(path, p))) continue
      if (!to.some(map => within(pathText([...map.split('.'), name]), going[i] as string))) continue
      const shape = STANDS_FOR.exec(path)?.[1]
      if (shape) going.push(shape)
      else more.push(path)
    }
  return [...more, ...going.slice(edits.filter(e => e.now === null).length)].map(path => ({ path, now: null }))
}
