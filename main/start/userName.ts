import { userInfo } from 'node:os'

/** Who the change log says made a change; systems without a name for the user give none. */
export const userName = (): string => {
  try {
    return userInfo().username
  } catch {
    return ''
  }
}
