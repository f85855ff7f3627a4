import { EventEmitter } from 'node:events'
import { tmpdir } from 'node:os'
import { stage } from '../stage.ts'
import { preventable } from './preventable.ts'

class App extends EventEmitter {
  private readonly paths = new Map([['userData', tmpdir()]])
  readonly commandLine = { getSwitchValue: (name: string) => (name === 'data' ? stage().dataDir : '') }
  whenReady = async () => undefined
  requestSingleInstanceLock = () => true
  getPath = (name: string) => this.paths.get(name)
  setPath = (name: string, path: string) => void this.paths.set(name, path)
  addRecentDocument = (_path: string) => undefined
  clearRecentDocuments = () => undefined
  exit = (_code?: number) => stage().ended.resolve()
  quit = () => {
    const event = preventable()
    this.emit('will-quit', event)
    if (!event.isPrevented) stage().ended.resolve()
  }
}

export const app = new App()
