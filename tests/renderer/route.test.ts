import { describe, expect, it } from 'vitest'
import { hashFor, routeOf } from '../../renderer/app/route.ts'

describe('the address', () => {
  it.each([
    ['#plan/T3', { screen: 'plan', code: 'T3', part: null }],
    ['#plan/T3/wood', { screen: 'plan', code: 'T3', part: 'wood' }],
    ['#set-up', { screen: 'setUp', code: null, part: null }],
    ['#measure//learnt', { screen: 'measure', code: null, part: 'learnt' }],
  ] as const)('%s is a screen, a tool and a part', (hash, route) => {
    expect(routeOf(hash)).toEqual(route)
    expect(hashFor(route.screen, route.code, route.part)).toBe(hash)
  })

  it.each(['', '#', '#nowhere/T3', '#Plan/T3/wood/more'])('%s, which is nowhere, is the rack', (hash) => {
    expect(routeOf(hash).screen).toBe('rack')
  })

  it('holds a code of any letters', () => {
    expect(routeOf(hashFor('plan', 'T/3 ä', 'wood'))).toEqual({ screen: 'plan', code: 'T/3 ä', part: 'wood' })
  })
})
