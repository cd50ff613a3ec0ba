import { run } from './program.ts'

// A reader that has seen enough (`| head`) is no error.
process.stdout.on('error', e => {
  if ((e as NodeJS.ErrnoException).code === 'EPIPE') process.exit(0)
  throw e
})
process.exitCode = await run(process.argv.slice(2))
