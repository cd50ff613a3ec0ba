import { existsSync, writeFileSync } from 'node:fs'
import { createInterface } from 'node:readline/promises'
import { type Start as Answers, CHOICES, Refusal, startText } from '@ampwright/workbench'

export type Start = Answers & { out?: string }

const ASKS: Readonly<Record<keyof typeof CHOICES, string>> = {
  engine: 'Where is the engine',
  driven: 'Which wheels does it drive',
  body: 'What body',
  rules: 'Under whose rules is it approved',
}

function checked(what: keyof typeof CHOICES, value: string): string {
  const list: readonly string[] = CHOICES[what]
  if (!list.includes(value)) throw new Refusal(`new: --${what}: found «${value}»; accepted ${list.join(', ')}`)
  return value
}

/** Asks on a terminal for what the flags left out; elsewhere what is left out stays out. */
export async function newConversion(given: Start, say: (line: string) => void): Promise<string> {
  const s: Start = { ...given }
  startText(s)
  for (const what of Object.keys(CHOICES) as (keyof typeof CHOICES)[]) if (s[what] !== undefined) checked(what, s[what])
  if (process.stdin.isTTY && process.stdout.isTTY) {
    const ask = createInterface({ input: process.stdin, output: process.stdout })
    // A terminal that is closed (Ctrl-D) answers nothing more: a question would wait for ever.
    const left = new Promise<never>((_, reject) => ask.once('close', () => reject(new Refusal('\nnew: left off; nothing was written'))))
    left.catch(() => {})
    const answerTo = (question: string): Promise<string> => Promise.race([ask.question(question), left])
    try {
      if (s.name === undefined) {
        const name = (await answerTo('What is the car called? ')).trim()
        if (name !== '') s.name = name
      }
      for (const what of Object.keys(CHOICES) as (keyof typeof CHOICES)[]) {
        while (s[what] === undefined) {
          const answer = (await answerTo(`${ASKS[what]}? (${CHOICES[what].join(', ')}; empty: not known yet) `)).trim()
          if (answer === '') break
          if ((CHOICES[what] as readonly string[]).includes(answer)) s[what] = answer
          else say(`«${answer}» is none of them.`)
        }
      }
    } finally {
      ask.close()
    }
  }
  const slug =
    (s.name ?? 'my-car')
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '') || 'my-car'
  const file = s.out ?? `${slug}.conversion.yaml`
  if (existsSync(file)) throw new Refusal(`new: ${file} is already there; nothing was written. Give another name with --out.`)
  const text = startText(s)
  try {
    writeFileSync(file, text, { flag: 'wx' })
  } catch (e) {
    throw new Refusal(`new: ${file} cannot be written (${(e as NodeJS.ErrnoException).code ?? 'unknown reason'})`)
  }
  return file
}
