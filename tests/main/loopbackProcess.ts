import { runLoopbackHost } from '../../main/start/loopbackHost.ts'
import { createTexts } from '../../main/texts.ts'

/** `npm start -- --host browser --address --data DIR`, without the check of the build. */
const [dataDir = ''] = process.argv.slice(2)
const { t } = createTexts()
const options = { host: 'browser', dataDir, port: 0, addressOnly: true, help: false, files: [] } as const
await runLoopbackHost(
  '.',
  options,
  (key, params) => void process.stdout.write(`${t(`hosts:start.${key}`, params ?? {})}\n`),
)
