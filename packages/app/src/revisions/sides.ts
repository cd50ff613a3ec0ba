import { api } from '../server/api.ts'
import type { Beside, Compared } from '../worker/service.ts'

/** What may stand on a side of a comparison: the car as it stands here, an earlier revision of it, another conversion or variant. */
export type SideChoice = 'now' | `revision ${number}` | `conversion ${string}`

/** The text of a choice, with the files of another conversion; undefined is the car in hand. */
export async function sideOf(id: string, choice: SideChoice): Promise<Compared | undefined> {
  if (choice === 'now') return undefined
  const [, kind, name = ''] = /^(revision|conversion) (.+)$/.exec(choice) ?? []
  if (kind === 'revision') return { text: (await api.revision(id, Number(name))).text }
  const other = await api.open(name)
  return {
    text: other.text,
    files: await Promise.all(other.files.map(async f => ({ name: f.name, bytes: await api.file(name, f.name) }) satisfies Beside)),
  }
}

/** The name a revision is saved under: of the car, in plain letters. */
export const fileName = (car: string, revision: number): string =>
  `${
    car
      .normalize('NFKD')
      // Letters lose their accents; whatever else no file name should hold becomes a dash.
      .replace(/\p{M}/gu, '')
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .toLowerCase() || 'car'
  }-r${revision}.conversion.yaml`
