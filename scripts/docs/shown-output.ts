import { run } from '@ampwright/cli'

const BLOCK = /<!-- output: (.+?) \| head (\d+) -->\n(?:```\n[\s\S]*?\n```\n)?/g

/** A page with what its commands really print, below each `<!-- output: … | head N -->`. */
export async function withOutput(page: string, root: string): Promise<string> {
  const blocks = new Map<string, string>()
  for (const [, command, lines] of page.matchAll(BLOCK)) {
    const out: string[] = []
    const args = (command as string).split(' ').map(a => (a.startsWith('samples/') ? `${root}/${a}` : a))
    await run(args, { width: 110, colour: false, out: l => out.push(l), err: l => out.push(l) })
    blocks.set(`${command} ${lines}`, out.slice(0, Number(lines)).join('\n'))
  }
  return page.replace(
    BLOCK,
    (_, command: string, lines: string) =>
      `<!-- output: ${command} | head ${lines} -->\n\`\`\`\n${blocks.get(`${command} ${lines}`)}\n\`\`\`\n`,
  )
}
