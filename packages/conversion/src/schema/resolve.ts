import { type Fact, type Gap, isGap, KINDS, type Origin } from '@ampwright/engine'
import type { Issue } from '../issue.ts'
import { nearest, sharingWords } from '../nearest.ts'
import type { Group as TextGroup, TextNode } from '../text/tree.ts'
import { isDate } from './dates.ts'
import type { FileField, Group, Leaf, MapOf, Node, PartField, Variants } from './field.ts'
import { filledIn } from './fillings.ts'
import { ALONE, quantityOf, sameAgain, understood } from './kept-readings.ts'
import type { PartRecord, Reading } from './look-ups.ts'
import { nearOf } from './near.ts'
import { lostAmong, type Reference } from './references.ts'
import { camel } from './resolved.ts'
import { tyreFields } from './tyre-fields.ts'
import { acceptedKeys, acceptedOf, bounds, labelOf } from './wording.ts'

type At = {
  readonly path: string
  readonly node: TextNode | undefined
  readonly from: TextNode | undefined
  readonly record: PartRecord | undefined
  readonly entry?: string
  /** Where the part that fills this is named, and by which of its keys, where not `part` and the key of the file. */
  readonly filled?: { readonly by: string; readonly from: string }
}

/** Walks schema and text together: every leaf becomes a fact or a gap, every fault an issue, none of them stops the rest. */
export class Resolver {
  readonly issues: Issue[] = []
  readonly facts: Fact<never>[] = []
  private readonly byPath = new Map<string, Fact<never>>()
  readonly references: Reference[] = []
  private readonly root: TextGroup | undefined
  private readonly reading: Reading
  constructor(root: TextGroup | undefined, reading: Reading) {
    this.root = root
    this.reading = reading
  }

  /** Resolves the whole file against its sections; `label` is what the file is called in messages. */
  all(sections: Readonly<Record<string, Node>>, label = 'conversion'): Record<string, unknown> {
    const whole: Group = { is: 'group', label, fields: sections }
    const model = this.group(whole, { path: '', node: this.root, from: this.root, record: undefined }, ['schema'])
    this.checkReferences()
    return model
  }

  private node(schema: Node, at: At): unknown {
    switch (schema.is) {
      case 'group':
        return this.group(schema, at)
      case 'map':
        return this.map(schema, at)
      case 'variants':
        return this.variants(schema, at)
      default:
        return this.leaf(schema, at)
    }
  }

  private asGroup(at: At, label: string): TextGroup | undefined {
    if (!at.node || at.node.kind === 'group') return at.node
    if (at.node.kind === 'value' && at.node.source === '') return undefined
    this.fault(
      at.node,
      at.path,
      `${label} is a group of lines`,
      at.node.kind === 'value' ? `«${at.node.source}»` : at.node.kind,
      'further lines, indented below the key',
    )
    return undefined
  }

  private group(schema: Group, at: At, alsoKnown: readonly string[] = []): Record<string, unknown> {
    const text = this.asGroup(at, schema.label),
      out: Record<string, unknown> = { at: at.path, given: text !== undefined }
    const join = (key: string): string => (at.path ? `${at.path}.${key}` : key)
    for (const [key, entry] of text?.entries ?? []) {
      if (key in schema.fields || key === 'note' || alsoKnown.includes(key)) continue
      const keys = Object.keys(schema.fields),
        near = nearest(key, keys)
      this.issues.push(this.issue(entry.keyAt, join(key), 'unknown key', `«${key}»`, acceptedKeys(schema, near !== undefined), near))
    }
    const recordOf = (key: string): PartRecord | undefined => {
      const named = text?.entries.get(key)?.node
      return named?.kind === 'value' ? this.reading.lookUps.parts?.(named.source) : undefined
    }
    const own = schema.fields['part']?.is === 'part' && text?.entries.get('part')?.node.kind === 'value',
      record = own ? recordOf('part') : schema.fromPartAbove ? at.record : undefined
    const filled = filledIn(schema)
    for (const [key, field] of Object.entries(schema.fields)) {
      const child = text?.entries.get(key)?.node,
        by = filled.get(key)
      out[camel(key)] = this.node(field, {
        path: join(key),
        node: child,
        from: text ?? at.from,
        record: by ? recordOf(by.by) : record,
        ...(by ? { filled: by } : {}),
        ...(at.entry === undefined ? {} : { entry: at.entry }),
      })
    }
    return out
  }

  private map(schema: MapOf, at: At): Record<string, unknown> {
    const text = this.asGroup(at, schema.label),
      out: Record<string, unknown> = {}
    for (const [key, entry] of text?.entries ?? [])
      if (key !== 'note')
        out[key] = this.node(schema.of, {
          path: `${at.path}.${key}`,
          node: entry.node,
          from: text,
          record: undefined,
          entry: at.entry === undefined ? key : `${at.entry} ${key}`,
        })
    return out
  }

  private variants(schema: Variants, at: At): unknown {
    const text = this.asGroup(at, schema.label),
      by = text?.entries.get(schema.by)?.node,
      kinds = Object.keys(schema.of)
    const kind = by?.kind === 'value' ? by.source : undefined
    const chosen = kind === undefined ? undefined : schema.of[kind]
    if (!chosen) {
      const accepted = kinds.join(', '),
        near = kind === undefined ? undefined : nearest(kind, kinds)
      this.issues.push(
        this.issue(
          (by ?? text ?? at.node ?? at.from)?.at,
          at.path,
          `${schema.label}: «${schema.by}» says which kind it is`,
          kind === undefined ? 'nothing' : `«${kind}»`,
          accepted,
          near,
        ),
      )
      return undefined
    }
    return { ...this.group(chosen, { ...at, node: text }, [schema.by]), kind }
  }

  private leaf(schema: Leaf, at: At): unknown {
    if (at.node && at.node.kind !== 'value') {
      this.fault(
        at.node,
        at.path,
        `${schema.label} is one value`,
        at.node.kind === 'group' ? 'a group of lines' : `a ${at.node.kind}`,
        acceptedOf(schema),
      )
      return schema.is === 'tyre' ? tyreFields(this.gap(schema, at)) : this.gap(schema, at)
    }
    const typed = at.node && at.node.source !== '' ? at.node.source : undefined
    if (typed !== undefined) return this.typed(schema, at, typed, at.node as TextNode)
    const key = at.filled?.from ?? at.path.slice(at.path.lastIndexOf('.') + 1),
      recorded = at.record?.fields[key]
    if (recorded && at.record) return this.recorded(schema, at, key, recorded.text, at.record)
    const named = schema.is === 'file' ? this.namedBeside(schema, at) : undefined
    if (named !== undefined) return named
    if (schema.is === 'quantity' && schema.assume && !this.reading.strict) {
      const assumed = schema.assume(nearOf(at.path, this.root, this.byPath))
      if (assumed)
        return this.fact(schema, at, assumed.value, {
          half: assumed.half,
          origin: { how: 'assumed', note: assumed.note, source: assumed.source },
        })
    }
    if (schema.is === 'file' && schema.assume && !this.reading.strict) {
      const assumed = schema.assume(nearOf(at.path, this.root, this.byPath))
      if (assumed) return this.fact(schema, at, assumed.value, { origin: { how: 'assumed', note: assumed.note, source: assumed.source } })
    }
    return schema.is === 'tyre' ? tyreFields(this.gap(schema, at)) : this.gap(schema, at)
  }

  private typed(schema: Leaf, at: At, text: string, node: TextNode): unknown {
    const before = understood.get(node)
    if (before?.schema === schema && before.path === at.path && before.entry === at.entry) {
      this.keep(before.fact)
      return before.fact
    }
    const found = this.readLeaf(schema, at, text, node)
    // What a word elsewhere or a file beside says may change while this text does not.
    if (ALONE.has(schema.is) && !isGap(found)) understood.set(node, { schema, path: at.path, entry: at.entry, fact: found as Fact<never> })
    return found
  }

  private readLeaf(schema: Leaf, at: At, text: string, node: TextNode): unknown {
    const wrong = (found: string, accepted: string, near?: string): Gap => {
      this.issues.push(this.issue(node.at, at.path, schema.label, found, accepted, near))
      return this.gap(schema, at)
    }
    switch (schema.is) {
      case 'quantity': {
        const read = quantityOf(text, schema.kind)
        if (!read.ok) return wrong(`${read.problem.found}: ${read.problem.why}`, read.problem.accepted, read.problem.nearest)
        const { value, half, origin } = read.quantity,
          { least, most } = schema
        if ((least !== undefined && value < least) || (most !== undefined && value > most))
          return wrong(`«${text}», outside what is possible`, bounds(schema))
        return this.fact(schema, at, value, { text, ...(half === undefined ? {} : { half }), ...(origin ? { origin } : {}) })
      }
      case 'choice': {
        const word = text.trim()
        return schema.oneOf.includes(word)
          ? this.fact(schema, at, word, { text })
          : wrong(`«${text}»`, schema.oneOf.join(', '), nearest(word, schema.oneOf))
      }
      case 'date':
        return isDate(text, schema.coarse)
          ? this.fact(schema, at, text, { text })
          : wrong(`«${text}»`, schema.coarse ? 'a date such as 2026-05-12, 2026-05 or 2026' : 'a date such as 2026-05-12')
      case 'tyre': {
        const fields = tyreFields(this.gap(schema, at), text)
        if ('found' in fields) return tyreFields(wrong(fields.found, fields.accepted))
        for (const f of Object.values(fields)) if (!isGap(f)) this.keep(f as Fact<never>)
        return fields
      }
      case 'reference':
        this.references.push({ path: at.path, to: schema.to, name: text, node })
        return this.fact(schema, at, text, { text })
      case 'file':
        return this.file(schema, at, text, wrong)
      case 'part':
        this.checkPart(schema, at, text, node)
        return this.fact(schema, at, text, { text })
      default:
        return this.fact(schema, at, text, { text })
    }
  }

  private file(schema: FileField, at: At, name: string, wrong: (found: string, accepted: string) => Gap): unknown {
    const { attachments } = this.reading.lookUps
    if (!attachments) return this.unread(schema, at, at.node, name)
    const got = attachments(name, schema.format)
    if (!got) return wrong(`«${name}», which is not beside the conversion`, `a ${schema.format} file beside it`)
    return got.ok ? this.fact(schema, at, got.datum as never, { text: name }) : wrong(`«${name}»: ${got.found}`, got.accepted)
  }

  /** A part that is not there, or of a class that does not belong here, fills nothing: said even where all it would fill is typed. */
  private checkPart(schema: PartField, at: At, name: string, node: TextNode): void {
    const { parts, partNames = [] } = this.reading.lookUps
    if (!parts) return
    const fits = (id: string): boolean => schema.classes.length === 0 || schema.classes.some(c => id.startsWith(`${c}-`)),
      found = parts(name)
    if (found && fits(name)) return
    const fitting = partNames.filter(fits)
    this.issues.push({
      ...this.issue(
        node.at,
        at.path,
        found ? 'a part of another class' : 'not in the catalogue',
        `«${name}»`,
        `the name of a part${schema.classes.length ? ` (${schema.classes.join(', ')})` : ''}, as in ${fitting[0] ?? 'class-name@1'}`,
        nearest(name, fitting) ?? nearest(`${name.replace(/@.*/, '')}@1`, fitting) ?? sharingWords(name, fitting),
      ),
      harm: 'note',
      about: 'part',
    })
  }

  /** A file that cannot be looked for: the conversion came without a folder, over standard input say. */
  private unread(schema: FileField, at: At, node: TextNode | undefined, name: string): Gap {
    if (node)
      this.issues.push({
        ...this.issue(
          node.at,
          at.path.replace(/#.*/, ''),
          schema.label,
          `«${name}», which cannot be looked for here`,
          'a conversion that is read from its folder',
        ),
        harm: 'note',
      })
    return this.gap(schema, at)
  }

  /** A file or cycle that a word beside names: its fact stands at that word, for it moves with it. */
  private namedBeside(schema: FileField, at: At): unknown {
    if (!schema.named) return undefined
    const word = at.from?.kind === 'group' ? at.from.entries.get(schema.named.by)?.node : undefined
    const key = at.path.slice(at.path.lastIndexOf('.') + 1),
      path = at.path.slice(0, -key.length) + schema.named.by
    // What is missing is the word beside: that is what somebody would write.
    if (word?.kind !== 'value' || word.source === '') return this.gap(schema, { ...at, path })
    const there = { ...at, path: `${path}#${key}` },
      { lookUps } = this.reading
    const wrong = (found: string, accepted: string, near?: string): Gap => {
      if (!this.issues.some(i => i.path === path)) this.issues.push(this.issue(word.at, path, schema.label, found, accepted, near))
      return this.gap(schema, at)
    }
    if (schema.named.in === 'cycles') {
      if (!lookUps.cycles) return this.gap(schema, at)
      const cycle = lookUps.cycles(word.source),
        names = lookUps.cycleNames ?? []
      return cycle
        ? this.fact(schema, there, cycle as object, { text: word.source })
        : wrong(`«${word.source}»`, names.join(', ') || 'a standard cycle', nearest(word.source, names))
    }
    if (!lookUps.attachments) return this.unread(schema, there, word, word.source)
    const got = lookUps.attachments(word.source, schema.format)
    if (!got) return wrong(`«${word.source}», which is not beside the conversion`, `a ${schema.format.split(' ')[0]} file beside it`)
    if (!got.ok) return wrong(`«${word.source}»: ${got.found}`, got.accepted)
    return got.datum === undefined ? this.gap(schema, at) : this.fact(schema, there, got.datum as object, { text: word.source })
  }

  private recorded(schema: Leaf, at: At, key: string, text: string, record: PartRecord): unknown {
    const how = record.defined?.includes(key) ? 'standard' : record.how
    const origin: Origin = { how, note: `part ${record.id}` }
    if (schema.is === 'choice') return schema.oneOf.includes(text) ? this.fact(schema, at, text, { text, origin }) : this.gap(schema, at)
    if (schema.is !== 'quantity') return this.gap(schema, at)
    const read = quantityOf(text, schema.kind)
    if (!read.ok) throw new RangeError(`part ${record.id}, ${at.path}: ${read.problem.why}`)
    return this.fact(schema, at, read.quantity.value, {
      text,
      origin,
      ...(read.quantity.half === undefined ? {} : { half: read.quantity.half }),
    })
  }

  private fact(
    schema: Leaf,
    at: At,
    value: number | string | object,
    more: { text?: string; half?: number; origin?: Origin },
  ): Fact<never> {
    const unit = schema.is === 'quantity' ? KINDS[schema.kind].unit : schema.is === 'file' ? schema.unit : ''
    const made = {
      path: at.path,
      label: labelOf(schema, at),
      symbol: schema.is === 'quantity' ? schema.symbol : '',
      unit,
      value,
      ...(schema.is === 'quantity' ? { shows: schema.kind } : {}),
      ...(schema.measure && more.origin?.how === 'assumed' ? { measure: schema.measure } : {}),
      ...more,
    } as unknown as Fact<never>
    const fact = at.node ? made : sameAgain(schema, made)
    this.keep(fact)
    return fact
  }
  private keep(fact: Fact<never>): void {
    this.facts.push(fact)
    if (!this.byPath.has((fact as Fact).path)) this.byPath.set((fact as Fact).path, fact)
  }

  private gap(schema: Leaf, at: At): Gap {
    const key = at.path.slice(0, at.path.lastIndexOf('.')),
      part = at.from?.kind === 'group' ? at.from.entries.get(at.filled?.by ?? 'part') : undefined
    const unknownPart = part?.node.kind === 'value' && key !== '' && !this.reading.lookUps.parts?.(part.node.source)
    return sameAgain(schema, {
      gap: true,
      path: at.path,
      label: labelOf(schema, at),
      until: schema.until ?? 'any time',
      ...(schema.measure ? { measure: schema.measure } : {}),
      why: unknownPart ? 'not in the catalogue' : 'missing',
    })
  }

  private checkReferences(): void {
    for (const { of, names, near } of lostAmong(this.references, this.root, this.reading.torn ?? new Set())) {
      const [what, accepted] = [`names something in ${of.to.join(' or ')}`, names.join(', ') || 'nothing is there yet']
      this.issues.push(this.issue(of.node.at, of.path, what, `«${of.name}»`, accepted, near))
    }
  }

  private fault(node: TextNode, path: string, what: string, found: string, accepted: string): void {
    this.issues.push(this.issue(node.at, path, what, found, accepted))
  }

  private issue(
    at: { line: number; column: number } | undefined,
    path: string,
    what: string,
    found: string,
    accepted: string,
    near?: string,
  ): Issue {
    return {
      ...(this.reading.file ? { file: this.reading.file } : {}),
      line: at?.line ?? 1,
      column: at?.column ?? 1,
      path,
      what,
      found,
      accepted,
      ...(near ? { nearest: near } : {}),
    }
  }
}
