import { Component, type ReactNode } from 'react'

interface NoPictureProps {
  /** Shown instead where the graphics cannot be had. */
  readonly instead: ReactNode
  readonly children: ReactNode
}

/** Keeps a failing 3-D view to itself: everything round it goes on working. */
export class NoPicture extends Component<NoPictureProps, { readonly broken: boolean }> {
  override state = { broken: false }

  static getDerivedStateFromError(): { readonly broken: boolean } {
    return { broken: true }
  }

  override render(): ReactNode {
    return this.state.broken ? this.props.instead : this.props.children
  }
}

/** What draws in this window: nothing, the processor alone, or a graphics unit. */
export type Drawing = 'none' | 'software' | 'full'

/** Names by which renderers on the processor give themselves away. */
const SOFTWARE = /swiftshader|llvmpipe|software|basic render/i

const asked = (): Drawing => {
  const context = document.createElement('canvas').getContext('webgl2')
  if (!context) return 'none'
  const names = context.getExtension('WEBGL_debug_renderer_info')
  const name = String(context.getParameter(names?.UNMASKED_RENDERER_WEBGL ?? context.RENDERER))
  context.getExtension('WEBGL_lose_context')?.loseContext()
  return SOFTWARE.test(name) ? 'software' : 'full'
}

let known: Drawing | null = null

/**
 * Asked before the canvas is made, and once a window, as the asking takes a canvas of its own; where nothing drew, it may now.
 * @param again whatever was known
 */
export const drawingOf = (again = false): Drawing => {
  if (again || known === null || known === 'none') known = asked()
  return known
}
