import { useTexts } from '../ui/texts.tsx'
import { partOf, parts } from './parts.ts'
import { hashFor, type Route } from './route.ts'
import { sayNothing, useApp } from './store.ts'
import './partNav.css'

/** The way between a screen's parts; nothing where there is only one. */
export const PartNav = ({ screen, part }: Pick<Route, 'screen' | 'part'>) => {
  const t = useTexts()
  const code = useApp((app) => app.tool?.code ?? null)
  const names = Object.keys(parts[screen])
  if (names.length === 1) return null
  return (
    <nav className="part-nav" aria-label={t('common:partsOf', { screen: t(`common:screen.${screen}`) })}>
      {names.map((name, i) => (
        <a
          key={name}
          href={hashFor(screen, code, i === 0 ? null : name)}
          aria-current={name === partOf(screen, part) ? 'page' : undefined}
          onClick={sayNothing}
        >
          {t(`common:part.${screen}.${name}`)}
        </a>
      ))}
    </nav>
  )
}
