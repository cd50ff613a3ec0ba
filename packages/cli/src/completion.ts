import { Refusal } from './load.ts'

const COMMANDS = [
  'new',
  'assess',
  'why',
  'survey',
  'handbook',
  'compare',
  'set',
  'remedy',
  'modules',
  'accept',
  'chart',
  'table',
  'schema',
  'completion',
]

/** A script that completes commands, options and conversion files in a shell. */
export function completion(shell: string, figures = 'ampwright'): string {
  const words = COMMANDS.join(' ')
  switch (shell) {
    case 'bash':
      return `_ampwright() {
  local cur=\${COMP_WORDS[COMP_CWORD]}
  if [ "$COMP_CWORD" -eq 1 ]; then COMPREPLY=($(compgen -W "${words}" -- "$cur")); return; fi
  case "$cur" in
    --*) COMPREPLY=($(compgen -W "--json --strict --units --traces --depth --input --help" -- "$cur"));;
    *) COMPREPLY=($(compgen -f -X '!*.conversion.yaml' -- "$cur") $(compgen -d -- "$cur"));;
  esac
}
complete -F _ampwright ${figures}`
    case 'zsh':
      return `#compdef ${figures}
_arguments '1:command:(${words})' '*:file:_files -g "*.conversion.yaml"' '--json[machine-readable]' '--strict[assume nothing]' '--units[units of the output]:system:(metric us uk)'`
    case 'fish':
      return (
        COMMANDS.map(c => `complete -c ${figures} -n __fish_use_subcommand -a ${c}`).join('\n') +
        `\ncomplete -c ${figures} -l json\ncomplete -c ${figures} -l strict\ncomplete -c ${figures} -l units -a 'metric us uk'`
      )
    default:
      throw new Refusal(`completion: «${shell}» is no shell this knows; bash, zsh and fish are`)
  }
}
