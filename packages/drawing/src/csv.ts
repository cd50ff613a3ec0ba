import type { Picture } from './picture.ts'

/** What a picture shows as comma-separated values (RFC 4180): decimal points, cells with commas, quotes or line ends in quotes. */
export function csvOf(picture: Pick<Picture, 'table'>): string {
  const { columns, rows } = picture.table()
  return [columns, ...rows].map(row => `${row.map(cell).join(',')}\r\n`).join('')
}
const cell = (value: string | number | undefined): string => {
  const text = value === undefined ? '' : String(value)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
