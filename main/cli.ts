import { runCommand } from './commandLine/command.ts'

/**
 * `npm run --silent job -- job.json [--card out.pdf]`: the report of a job file, on standard output; `-` reads standard input.
 * A job that cannot be done: exit code 2, one line a reason on standard error, nothing written.
 */
const { exitCode, output, errors } = await runCommand(process.argv.slice(2))
// Whoever reads the report may stop reading before its end; that is no fault.
process.stdout.on('error', () => process.exit())
process.stdout.write(output)
process.stderr.write(errors)
process.exitCode = exitCode
