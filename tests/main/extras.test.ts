import { expect, it } from 'vitest'
import { benchForEach } from './benchForEach.ts'
import { codesOf, toolDraft } from './support.ts'

const bench = benchForEach()

it('a purpose or a field of the workshop’s own goes only when no tool has an entry for it', async () => {
  const { value: purpose } = await bench().done('purpose.add', { name: 'roughing' })
  const { value: field } = await bench().done('ownField.add', { name: 'bought', kind: 'day', unit: '' })
  const curves = [{ purposeId: purpose.id, reliefMm: 0.3, shavingDepthMm: 0.2 }]
  const own = { [field.id]: '2020-03-01' }
  const { value: tool } = await bench().done('tool.add', { ...toolDraft, curves, own })
  const goneCodes = async () => [
    codesOf(await bench().call('purpose.remove', { id: purpose.id, version: 1 })),
    codesOf(await bench().call('ownField.remove', { id: field.id, version: 1 })),
  ]
  expect(await goneCodes()).toEqual([['usedByTools'], ['usedByTools']])
  await bench().done('tool.edit', { id: tool.id, version: 1, draft: toolDraft })
  expect(await goneCodes()).toEqual([[], []])
})
