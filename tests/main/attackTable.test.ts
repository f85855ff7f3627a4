import { expect, it } from 'vitest'
import { type Attack, attacks } from './attacks.ts'
import { asked, get, host, onLoopbackHost, startPath } from './loopbackBench.ts'
import { rawRequest } from './rawRequest.ts'

onLoopbackHost()

/** Whether anything came of it: an answer that is no refusal, something handed out, a word to other pages, a call done. */
const cameIn = async ({ lines, body }: Attack): Promise<boolean> => {
  const before = asked.length
  const answer = await rawRequest(host.port, lines, body)
  const tells = /^(set-cookie:|access-control-|location:)/im.test(answer.head) || /secret|<title>/.test(answer.body)
  return answer.status < 400 || tells || asked.length > before || 'isAdmitted' in {}
}

it('nothing that is tried on the host for a browser comes in', async () => {
  const rows: { tried: string; times: number; 'let in': number }[] = []
  for (const [tried, list] of Object.entries(attacks())) {
    const came: string[] = []
    for (const attack of list) if (await cameIn(attack)) came.push(attack.lines.join(' + '))
    expect(came, tried).toEqual([])
    rows.push({ tried, times: list.length, 'let in': came.length })
  }
  console.table(rows)
})

it('whoever guesses too often voids the code, and a new one is good', async () => {
  const guesses = attacks()['codes guessed'] ?? []
  const path = startPath()
  for (const attack of guesses) await rawRequest(host.port, attack.lines)
  expect((await get(path)).status).toBe(401)
  expect((await get(startPath())).status).toBe(303)
})
