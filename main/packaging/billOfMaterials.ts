import type { Licence } from './licences.ts'

/** A hash of the lock (`sha512-…`, base64) as the bill has it: hexadecimal. */
const hashOf = (integrity: string): readonly object[] => {
  const [algorithm = '', value = ''] = integrity.split('-', 2)
  return algorithm === 'sha512' ? [{ alg: 'SHA-512', content: Buffer.from(value, 'base64').toString('hex') }] : []
}

const SPDX_ID = /^[A-Za-z0-9.-]+$/

/**
 * What the program is made of, as CycloneDX 1.6 (ECMA-424) describes it. The same input gives the same text.
 * @param version the program's own
 */
export const billOfMaterials = (version: string, licences: readonly Licence[]): string =>
  `${JSON.stringify(
    {
      bomFormat: 'CycloneDX',
      specVersion: '1.6',
      version: 1,
      metadata: {
        component: { type: 'application', name: 'camberwright', version, 'bom-ref': `camberwright@${version}` },
      },
      components: licences.map(({ name, version: of, licence, integrity }) => ({
        type: 'library',
        'bom-ref': `${name}@${of}`,
        name,
        version: of,
        purl: `pkg:npm/${name.replace('@', '%40')}@${of}`,
        licenses: [SPDX_ID.test(licence) ? { license: { id: licence } } : { expression: licence }],
        hashes: hashOf(integrity),
      })),
    },
    null,
    2,
  )}\n`
