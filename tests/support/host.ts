import { join } from 'node:path'
import { startLoopbackHost } from '../../main/serve.ts'
import { startServices } from '../../main/serviceClient.ts'

/** A host as `npm start` makes it, without the check of the build: prints its address, ends when its input does. */
const [dataDir = ''] = process.argv.slice(2)
const services = await startServices({ dataDir, who: 'test' })
const pageFolder = join(import.meta.dirname, '..', '..', 'out', 'renderer')
const host = await startLoopbackHost({ services, pageFolder, port: 0 })
process.stdout.write(`${host.newStartAddress()}\n`)
process.stdin.resume().once('end', () => void host.close().then(services.close))
