import { homedir } from 'node:os'
import { join, resolve } from 'node:path'

type Surroundings = {
  readonly platform: NodeJS.Platform
  readonly env: Readonly<Record<string, string | undefined>>
  readonly home: string
}

/**
 * The folder everything is kept in: what was asked for, else AMPWRIGHT_DATA, else where the system keeps the data of programs for one user
 * (XDG Base Directory Specification; Application Support; AppData: the last two from memory).
 */
export function dataFolder(
  asked?: string,
  { platform, env, home }: Surroundings = { platform: process.platform, env: process.env, home: homedir() },
): string {
  const said = asked ?? env['AMPWRIGHT_DATA']
  if (said !== undefined && said !== '') return resolve(said)
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'ampwright')
  if (platform === 'win32') return join(env['LOCALAPPDATA'] || join(home, 'AppData', 'Local'), 'ampwright')
  const shared = env['XDG_DATA_HOME']
  return join(shared?.startsWith('/') ? shared : join(home, '.local', 'share'), 'ampwright')
}
