/** Where a group of the file stands, and whether the file has it at all. Fields of a group that is not there are gaps. */
export type Here = { readonly at: string; readonly given: boolean }
export type Named<T> = Readonly<Record<string, T>>
