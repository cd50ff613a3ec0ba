import type { Curve, Field, Grid, Here, Tyre } from '@ampwright/engine'
import type { ChoiceField, Fields, FileField, Group, MapOf, Node, TyreField, Variants } from './field.ts'

/** `kebab-case` of the file as `camelCase` of the model. */
export type Camel<S extends string> = S extends `${infer A}-${infer B}` ? `${A}${Capitalize<Camel<B>>}` : S

/** What a schema node becomes in the model. */
export type Resolved<N extends Node> = N extends TyreField
  ? Tyre
  : N extends FileField<infer D>
    ? Field<D extends 'curve' ? Curve : D extends 'grid' ? Grid : string>
    : N extends ChoiceField<infer W>
      ? Field<W>
      : N extends { is: 'words' | 'date' | 'reference' | 'part' }
        ? Field<string>
        : N extends Group<infer F>
          ? ResolvedGroup<F>
          : N extends MapOf<infer E>
            ? Readonly<Record<string, Resolved<E>>>
            : N extends Variants<infer V>
              ? { [K in keyof V & string]: ResolvedGroup<V[K]['fields']> & { readonly kind: K } }[keyof V & string]
              : Field

export type ResolvedGroup<F extends Fields> = Here & { readonly [K in keyof F & string as Camel<K>]: Resolved<F[K]> }

/** Keys of the schema are few and met at every reading. */
const camels = new Map<string, string>()
/** A key of the schema as the model spells it. Not for keys a file invents: they are kept as they stand. */
export function camel(key: string): string {
  const before = camels.get(key)
  if (before !== undefined) return before
  const now = key.replace(/-(\p{L}|\d)/gu, (_, c: string) => c.toUpperCase())
  camels.set(key, now)
  return now
}
