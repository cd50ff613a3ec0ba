/** Gives a file to whoever asked, without asking the network. */
export function saveAs(content: string | Blob, type: string, name: string): void {
  const url = URL.createObjectURL(typeof content === 'string' ? new Blob([content], { type }) : content),
    link = document.createElement('a')
  link.href = url
  link.download = name.replace(/[^\p{L}\p{N}_.-]+/gu, '-')
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
