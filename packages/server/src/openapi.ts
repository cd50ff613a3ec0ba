type Described = { readonly components?: { readonly schemas?: Record<string, unknown> }; readonly [key: string]: unknown }

/** Shapes that stand in no answer but in a stream: described all the same. */
const STREAMED = ['Told', 'Job']

/** The description of the interface as it is published: shapes nothing leads to are left out. */
export function published(document: unknown): Described {
  const all = document as Described,
    schemas = all.components?.schemas ?? {},
    needed = new Set<string>(STREAMED),
    look = [JSON.stringify({ ...all, components: undefined }), ...STREAMED.map(name => JSON.stringify(schemas[name]))]
  for (let text = look.pop(); text !== undefined; text = look.pop())
    for (const [, name = ''] of text.matchAll(/"#\/components\/schemas\/([^"]+)"/g))
      if (!needed.has(name)) {
        needed.add(name)
        look.push(JSON.stringify(schemas[name]))
      }
  const kept = Object.fromEntries(Object.entries(schemas).filter(([name]) => needed.has(name)))
  return { ...all, components: { ...all.components, schemas: kept } }
}
