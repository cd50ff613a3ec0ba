import { partClasses } from '@ampwright/catalogue'
import { FORMULAS, RULES } from '@ampwright/engine'
import { Refusal } from '@ampwright/workbench'
import type { Command } from 'commander'

type Offered = { readonly long: string; readonly says: string; readonly values: readonly string[]; readonly takes: boolean }
type Known = { readonly name: string; readonly says: string; readonly options: readonly Offered[]; readonly words: readonly string[] }

const rules = (): readonly string[] => RULES.map(r => r.id)
/**
 * Words an argument may be, where they stand fast. Names of figures, traces and tables come from a file: finding them takes a whole assessment, too
 * long to wait for at every press of the key.
 */
const WORDS: Readonly<Record<string, () => readonly string[]>> = {
  handbook: () => FORMULAS.map(f => f.formula.card.id),
  remedy: rules,
  accept: rules,
  'does-not-apply': rules,
  'take-back': rules,
  parts: () => partClasses.map(c => c.class),
  completion: () => ['bash', 'zsh', 'fish'],
}
/** Commands that read no file. */
const WITHOUT_FILE: ReadonlySet<string> = new Set(['handbook', 'parts', 'completion', 'schema', 'new', 'serve'])

/** What the files of a command end in; a scan is told by what is in it. */
const ENDS: Readonly<Record<string, string>> = { shelf: '*.workshop.yaml', scan: '*' }
const endOf = (command: string): string => ENDS[command] ?? '*.conversion.yaml'

const known = (program: Command): readonly Known[] =>
  program.commands.map(c => ({
    name: c.name(),
    says: c.description(),
    words: WORDS[c.name()]?.() ?? [],
    options: [
      ...c.options.map(o => ({ long: o.long ?? '', says: o.description, values: o.argChoices ?? [], takes: o.required || o.optional })),
      { long: '--help', says: 'help on this command', values: [], takes: false },
    ],
  }))

/** A script that completes commands, their options, rules, formulas, classes of parts and conversion files in a shell. */
export function completion(shell: string, program: Command): string {
  const of = { bash, zsh, fish }[shell]
  if (!of) throw new Refusal(`completion: «${shell}» is no shell this knows; bash, zsh and fish are`)
  return of(program.name(), known(program))
}

const choices = (commands: readonly Known[]): readonly Offered[] => [
  ...new Map(
    commands
      .flatMap(c => c.options)
      .filter(o => o.values.length)
      .map(o => [o.long, o]),
  ).values(),
]

const filesOf = (command: string): string => (WITHOUT_FILE.has(command) ? '; files=' : ENDS[command] ? `; files='!${endOf(command)}'` : '')
const bash = (name: string, commands: readonly Known[]): string => `_${name}() {
  local cur=\${COMP_WORDS[COMP_CWORD]} prev=\${COMP_WORDS[COMP_CWORD-1]} options= words= files='!*.conversion.yaml'
  if [ "$COMP_CWORD" -eq 1 ]; then COMPREPLY=($(compgen -W "${commands.map(c => c.name).join(' ')}" -- "$cur")); return; fi
  case "$prev" in
${choices(commands)
  .map(o => `    ${o.long}) COMPREPLY=($(compgen -W "${o.values.join(' ')}" -- "$cur")); return;;`)
  .join('\n')}
  esac
  case "\${COMP_WORDS[1]}" in
${commands
  .map(c => `    ${c.name}) options="${c.options.map(o => o.long).join(' ')}"; words="${c.words.join(' ')}"${filesOf(c.name)};;`)
  .join('\n')}
  esac
  case "$cur" in
    --*) COMPREPLY=($(compgen -W "$options" -- "$cur"));;
    *) COMPREPLY=($(compgen -W "$words" -- "$cur"))
       if [ -n "$files" ]; then COMPREPLY+=($(compgen -f -X "$files" -- "$cur") $(compgen -d -- "$cur")); fi;;
  esac
}
complete -F _${name} ${name}`

/** Inside single quotes of a shell, and free of what _arguments takes for its own marks. */
const quiet = (text: string): string => text.replace(/'/g, '’').replace(/[[\]:]/g, ' ')

const zsh = (name: string, commands: readonly Known[]): string => `#compdef ${name}
_${name}() {
  if (( CURRENT == 2 )); then
    local -a commands=(${commands.map(c => `'${c.name}:${quiet(c.says)}'`).join(' ')})
    _describe command commands
    return
  fi
  case "$words[2]" in
${commands
  .map(c => {
    const options = c.options.map(
      o => `'${o.long}[${quiet(o.says)}]${o.takes ? `:value:${o.values.length ? `(${o.values.join(' ')})` : ''}` : ''}'`,
    )
    const rest = [
      ...(WITHOUT_FILE.has(c.name) ? [] : [`'*:file:_files -g "${endOf(c.name)}"'`]),
      ...(c.words.length ? [`'${WITHOUT_FILE.has(c.name) ? 2 : 3}:name:(${c.words.join(' ')})'`] : []),
    ]
    return `    ${c.name}) _arguments ${[...options, ...rest].join(' ')};;`
  })
  .join('\n')}
  esac
}
compdef _${name} ${name}`

const fish = (name: string, commands: readonly Known[]): string =>
  commands
    .flatMap(c => {
      const here = `complete -c ${name} -n '__fish_seen_subcommand_from ${c.name}'`
      return [
        `complete -c ${name} -n __fish_use_subcommand -a ${c.name} -d '${quiet(c.says)}'`,
        ...c.options.map(
          o =>
            `${here} -l ${o.long.slice(2)}${o.takes ? ' -r' : ''}${o.values.length ? ` -f -a '${o.values.join(' ')}'` : ''} -d '${quiet(o.says)}'`,
        ),
        ...(c.words.length ? [`${here} -a '${c.words.join(' ')}'`] : []),
      ]
    })
    .join('\n')
