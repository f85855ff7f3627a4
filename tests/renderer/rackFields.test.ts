import { expect, it } from 'vitest'
import quantityTexts from '../../assets/texts/en/quantities.json' with { type: 'json' }
import { toolFields } from '../../renderer/rack/drafts.ts'

it('the rack asks for the primary bevel at the tip, which is what a job sets the wheel to, not for a protractor on the hollow', () => {
  const field = toolFields([]).find(({ key }) => key === 'bevelAngleDeg')
  const quantity = field?.kind === 'figure' ? field.quantity : null
  expect(quantity).toBe('aim.bevelAngleDeg')
  expect(quantityTexts.aim.bevelAngleDeg.sentence).toContain('at the very tip')
})
