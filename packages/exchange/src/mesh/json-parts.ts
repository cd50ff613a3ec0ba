import { quoted } from '../issue.ts'
import { refuse } from './mesh-file.ts'

/** A part of a JSON document with its place, asked for what must stand there. All of it throws MeshRefusal. */
export class JsonPart {
  readonly where: string
  readonly value: unknown

  constructor(value: unknown, where: string) {
    this.value = value
    this.where = where
  }

  has(name: string): boolean {
    return this.#object()[name] !== undefined
  }

  at(name: string): JsonPart {
    return new JsonPart(this.#object()[name], this.where === '' ? name : `${this.where}.${name}`)
  }

  /** The parts of a list; none where it is missing. */
  list(): readonly JsonPart[] {
    if (this.value === undefined) return []
    if (!Array.isArray(this.value)) return this.#wrong('a list')
    return this.value.map((x, i) => new JsonPart(x, `${this.where}[${i}]`))
  }

  /** The part of a list that this number names. */
  of(list: readonly JsonPart[], what: string): JsonPart {
    const found = list[this.whole()]
    return (
      found ??
      refuse(this.where, `there is no such ${what}`, `${this.value}`, list.length ? `0 to ${list.length - 1}` : 'none, for there are none')
    )
  }

  whole(missing?: number): number {
    const { value } = this
    if (value === undefined && missing !== undefined) return missing
    return Number.isSafeInteger(value) && (value as number) >= 0 ? (value as number) : this.#wrong('a whole number')
  }

  numbers(count: number): readonly number[] | undefined {
    const { value } = this
    if (value === undefined) return undefined
    const right = Array.isArray(value) && value.length === count && value.every(x => typeof x === 'number' && Number.isFinite(x))
    return right ? (value as number[]) : this.#wrong(`${count} numbers`)
  }

  text(): string | undefined {
    const { value } = this
    return value === undefined || typeof value === 'string' ? value : this.#wrong('a text')
  }

  #object(): Readonly<Record<string, unknown>> {
    const { value } = this
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : this.#wrong('an object')
  }

  #wrong(accepted: string): never {
    return refuse(this.where || 'the document', 'the document is not as glTF wants it', found(this.value), accepted)
  }
}

const found = (value: unknown): string => (value === undefined ? 'nothing' : quoted(String(JSON.stringify(value))))
