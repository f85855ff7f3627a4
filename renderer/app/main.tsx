import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { z } from 'zod'
import '../../assets/fonts/faces.css'
import '../ui/choice.css'
import '../ui/drawing.css'
import '../ui/figure.css'
import '../ui/form.css'
import { Texts } from '../ui/texts.tsx'
import { App } from './App.tsx'
import { hearFaults } from './faults/pageFaults.ts'
import { readParts } from './parts.ts'
import { loadSettings } from './readRack.ts'
import './base.css'
import './shell.css'
import './tokens.css'
import './contrast.css'
import './touch.css'

// The content policy forbids code made from text, which zod would otherwise try first.
z.config({ jitless: true })

hearFaults()

/** By then the first screen has what it shows: reading the others before would only keep it waiting (ms). */
const READ_AHEAD_AFTER_MS = 1000

const root = document.getElementById('root')
// The first picture is in the workshop's language; a host that does not answer is told by the window itself.
await loadSettings()
if (root) {
  createRoot(root).render(
    <StrictMode>
      <Texts>
        <App />
      </Texts>
    </StrictMode>,
  )
  setTimeout(() => requestIdleCallback(readParts), READ_AHEAD_AFTER_MS)
}
