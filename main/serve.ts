import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { LOOPBACK } from './loopback/address.ts'
import { createAdmission, startAddress } from './loopback/admission.ts'
import { createEventStreams } from './loopback/events.ts'
import { answer, type Desk } from './loopback/routes.ts'
import type { ServiceClient } from './serviceClient.ts'

/** A browser of this machine sends at once; whoever dribbles is cut off, whether in the head or in the body of a request. */
const patience = { headersTimeout: 10_000, requestTimeout: 30_000, connectionsCheckingInterval: 2_000 }

export interface LoopbackOptions {
  readonly services: ServiceClient
  /** Where the built page lies. */
  readonly pageFolder: string
  /** 0: any free one. */
  readonly port: number
  /** For tests, which cannot wait that long. */
  readonly patience?: typeof patience
}

/** The program served to a browser of this machine, from the same services as the window. */
export interface LoopbackHost {
  readonly port: number
  /** An address that lets whoever opens it first in; the one before it is no longer good. */
  newStartAddress(): string
  /** With which a start on the same data asks for an address (`start/running.ts`). */
  readonly key: string
  /** Ends every connection. The services stay: whoever started them closes them. */
  close(): Promise<void>
}

const listen = (server: Server, port: number): Promise<number> =>
  new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, LOOPBACK, () => resolve((server.address() as AddressInfo).port))
  })

const closeServer = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })

const deskOf = ({ services, pageFolder }: LoopbackOptions, port: number): Desk => ({
  port,
  pageFolder,
  services,
  admission: createAdmission(port),
  events: createEventStreams(),
})

/**
 * Serves the program on 127.0.0.1.
 *
 * @throws as `net.Server.listen` where the port cannot be had
 */
export const startLoopbackHost = async (options: LoopbackOptions): Promise<LoopbackHost> => {
  const server = createServer(options.patience ?? patience)
  const port = await listen(server, options.port)
  const desk = deskOf(options, port)
  const stopListening = options.services.onEvent(desk.events.send)
  server.on('request', (request, response) => {
    // A browser that goes away in the middle of a request is nobody's fault and needs no answer.
    answer(desk, request, response).catch(() => response.destroy())
  })
  return {
    port,
    newStartAddress: () => startAddress(port, desk.admission),
    key: desk.admission.key,
    close: async () => {
      stopListening()
      desk.events.close()
      await closeServer(server)
    },
  }
}
