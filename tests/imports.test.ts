import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'

const root = normalize(join(new URL('.', import.meta.url).pathname, '..'))
const packages = join(root, 'packages')

/** Inside the engine: a folder may import those to its left, and itself. Domains know neither each other nor the model. */
const DOMAINS = [
  'vehicle',
  'drive',
  'battery',
  'fitting',
  'high-voltage',
  'charging',
  'low-voltage',
  'can',
  'ports',
  'cooling',
  'cabin',
  'brakes',
  'steering',
  'driveline',
  'structure',
  'trip',
  'cost',
]
const BASE = ['sources', 'working', 'numerics', 'physics']
const ENGINE: Readonly<Record<string, readonly string[]>> = {
  sources: [],
  working: ['sources'],
  numerics: [],
  physics: ['sources', 'working', 'numerics'],
  model: ['sources', 'working'],
  ...Object.fromEntries(DOMAINS.map(d => [d, BASE])),
  formulas: ['working', ...DOMAINS, 'physics'],
  studies: [...BASE, 'model', ...DOMAINS],
  rules: [...BASE, 'model', 'studies'],
  plan: [...BASE, 'model', 'studies'],
  proving: [...BASE, 'model', 'studies'],
  assess: [...BASE, 'model', 'studies', 'rules', 'plan', 'proving', 'headline'],
  headline: ['working', 'rules'],
  index: [...BASE, 'model', ...DOMAINS, 'studies', 'rules', 'plan', 'proving', 'assess', 'formulas', 'headline'],
}
const WHY_ENGINE =
  'the engine stacks working, numerics, model ← physics ← domains ← studies ← rules ← assess; move what both need down, or hand the value over in a study'

const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  engine: [],
  exchange: ['engine'],
  conversion: ['engine'],
  geometry: ['engine'],
  drawing: ['engine'],
  catalogue: ['engine', 'conversion'],
  store: ['engine', 'conversion'],
  papers: ['engine', 'conversion', 'geometry', 'catalogue', 'drawing'],
  workbench: ['engine', 'exchange', 'conversion', 'drawing', 'catalogue'],
  cli: ['engine', 'exchange', 'conversion', 'geometry', 'drawing', 'catalogue', 'workbench', 'store', 'papers', 'server'],
  server: ['engine', 'exchange', 'conversion', 'geometry', 'drawing', 'catalogue', 'workbench', 'store', 'papers'],
  // Of the server only its types: a test of its own holds that.
  app: ['engine', 'exchange', 'conversion', 'geometry', 'drawing', 'catalogue', 'workbench', 'server'],
}
const WHY_PACKAGE =
  'packages know only what lies before them: engine ← exchange, conversion, geometry, drawing ← catalogue, store ← workbench, papers ← server, app ← cli'

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s+['"]([^'"]+)['"]|(?:^|\n)\s*import\s+['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g
const sources = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(f => /\.tsx?$/.test(f) && !f.endsWith('.d.ts'))
    .map(f => join(folder, f))
const imports = (file: string): string[] => [...readFileSync(file, 'utf8').matchAll(IMPORT)].map(m => (m[1] ?? m[2] ?? m[3]) as string)
/** The app may know the shapes the server answers in, and nothing else of it. */
const withoutServerTypes = (file: string): string[] => {
  const text = readFileSync(file, 'utf8'),
    types = [...text.matchAll(/(?:^|\n)\s*import\s+type\s[^'"]*?from\s+['"]@ampwright\/server['"]/g)].length
  let left = types
  return imports(file).filter(target => target !== '@ampwright/server' || left-- <= 0)
}
const isTest = (file: string): boolean => file.endsWith('.test.ts')

/** Every breach of the import rule in one package, with its reason. Type-only imports count. */
export function breaches(name: string, files: readonly string[], read: (file: string) => string[]): string[] {
  const src = join(packages, name, 'src'),
    out: string[] = []
  for (const file of files) {
    const from = file.slice(src.length + 1).split('/')
    const layer = (from.length > 1 ? from[0] : (from[0] as string).replace(/(\.test)?\.tsx?$/, '')) as string
    for (const target of read(file)) {
      const say = (what: string, why: string): void => void out.push(`${name}/src/${from.join('/')} imports ${target}: ${what}. ${why}`)
      const workspace = /^@ampwright\/([^/]+)(\/.*)?$/.exec(target)
      if (workspace) {
        if (workspace[2]) say('reaches into a package past its index', 'a package is its index')
        if (!isTest(file) && !PACKAGES[name]?.includes(workspace[1] as string)) say(`${name} may not know ${workspace[1]}`, WHY_PACKAGE)
      } else if (target.startsWith('.')) {
        const path = normalize(join(dirname(file), target))
        if (!path.startsWith(`${src}/`)) {
          if (!isTest(file)) say('leaves its package', WHY_PACKAGE)
          continue
        }
        if (name !== 'engine' || isTest(file)) continue
        const to = path.slice(src.length + 1).split('/'),
          other = (to.length > 1 ? to[0] : (to[0] as string).replace('.ts', '')) as string
        if (other !== layer && !ENGINE[layer]?.includes(other)) say(`${layer} may not know ${other}`, WHY_ENGINE)
      } else if (name === 'engine' && !isTest(file))
        say(
          'the engine uses no library and no Node API',
          'it must run anywhere and give the same answer; a library is welcome inside numerics only',
        )
    }
  }
  return out
}

describe('the import rule', () => {
  for (const name of readdirSync(packages))
    it(`holds in ${name}`, () =>
      expect(
        breaches(
          name,
          existsSync(join(packages, name, 'src')) ? sources(join(packages, name, 'src')) : [],
          name === 'app' ? withoutServerTypes : imports,
        ),
      ).toEqual([]))

  it('lets the app know the types of the server, and none of its code', () => {
    const files = sources(join(packages, 'app', 'src'))
    const untyped = files.filter(f => /(?:import|export)\s+(?!type\b)[^'"]*from\s+['"]@ampwright\/server['"]/.test(readFileSync(f, 'utf8')))
    expect(untyped).toEqual([])
    expect(files.some(f => readFileSync(f, 'utf8').includes("from '@ampwright/server'"))).toBe(true)
  })

  it('catches a domain that imports another, a study in a domain, a library and an upward package', () => {
    const file = join(packages, 'engine/src/drive/x.ts')
    const caught = breaches('engine', [file], () => [
      '../battery/y.ts',
      '../studies/study.ts',
      'zod',
      '@ampwright/conversion',
      '../working/work.ts',
      '../../../cli/src/main.ts',
    ])
    expect(caught).toHaveLength(5)
    expect(caught.join()).not.toContain('working/work.ts')
  })

  it('finds no clock, chance, console or browser in the engine', () => {
    const forbidden = /\b(Date\.now|new Date|Math\.random|console\.|fetch\(|process\.|document\.|window\.(?!ts\b)[a-z]|performance\.)/
    const found = sources(join(packages, 'engine/src'))
      .filter(f => !isTest(f))
      .flatMap(f =>
        readFileSync(f, 'utf8')
          .split('\n')
          .map((line, i) => [line, i + 1] as const)
          .filter(([line]) => forbidden.test(line.replace(/\/\/.*|^\s*\*.*|\/\*\*.*\*\//, '')))
          .map(([line, i]) => `${f.slice(root.length)}:${i} ${line.trim()}`),
      )
    expect(found).toEqual([])
  })

  it('finds no clock, chance, Node or page in geometry, so that it runs in a worker of the browser', () => {
    const forbidden = /\b(Date\.now|new Date|Math\.random|console\.|fetch\(|process\.|document\.|window\.|performance\.|node:)/
    const files = sources(join(packages, 'geometry/src')).filter(f => !isTest(f))
    expect(files.length).toBeGreaterThan(15)
    expect(files.filter(f => forbidden.test(readFileSync(f, 'utf8').replace(/\/\*\*[^]*?\*\//g, '')))).toEqual([])
    expect(files.flatMap(imports).filter(target => !/^(\.|@ampwright\/engine$|three$|three-mesh-bvh$)/.test(target))).toEqual([])
  })
})
