import { Component, type ReactNode } from 'react'
import { useTexts } from '../ui/texts.tsx'
import { act } from './actions.ts'
import { noteFault } from './faults/pageFaults.ts'

interface UnbrokenProps {
  readonly children: ReactNode
}

/** Keeps one broken screen from taking the others with it; what was typed is kept by the host already. */
export class Unbroken extends Component<UnbrokenProps, { readonly broken: boolean }> {
  override state = { broken: false }

  static getDerivedStateFromError(): { readonly broken: boolean } {
    return { broken: true }
  }

  override componentDidCatch(error: unknown): void {
    noteFault(error)
  }

  override render(): ReactNode {
    return this.state.broken ? <Broken onAgain={() => this.setState({ broken: false })} /> : this.props.children
  }
}

const Broken = ({ onAgain }: { readonly onAgain: () => void }) => {
  const t = useTexts()
  return (
    <div className="page-note" role="alert">
      <p>{t('common:screenBroken')}</p>
      <p>
        <button type="button" className="word" onClick={() => act('reports')}>
          {t('reports:open')}
        </button>
      </p>
      <button type="button" className="key" onClick={onAgain}>
        {t('common:tryAgain')}
      </button>
    </div>
  )
}
