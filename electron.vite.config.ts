import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'electron-vite'

const at = (path: string): string => resolve(import.meta.dirname, path)

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      minify: 'oxc',
      rollupOptions: {
        input: { index: at('main/electron.ts'), worker: at('main/worker.ts'), maker: at('main/maker.ts') },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      minify: 'oxc',
      // A sandboxed preload can only be CommonJS.
      rollupOptions: {
        input: { preload: at('main/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'renderer',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      outDir: at('out/renderer'),
      minify: 'oxc',
      // The content policy lets typefaces and pictures come from files only, not from data addresses.
      assetsInlineLimit: 0,
      // The moving model's library alone is 960 kB; it is read from this machine, and only when Grind is opened.
      chunkSizeWarningLimit: 1000,
      rollupOptions: { input: at('renderer/index.html') },
    },
  },
})
