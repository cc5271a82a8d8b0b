import { navWords } from '../../shared/words/setup.ts';
import { isUnsaved } from '../setup/unsaved.ts';
import { type View, view, views } from './nav-view.ts';
import './nav.css';

/** The way from view to view. */
export const Nav = () => (
  <nav class="nav" aria-label={navWords.name}>
    {views.map((to) => (
      <Way key={to} to={to} />
    ))}
  </nav>
);

const Way = ({ to }: { readonly to: View }) => (
  <a class="nav-way" href={`#${to}`} aria-current={view.value === to ? 'page' : undefined}>
    {navWords[to]}
    {to === 'setup' && isUnsaved.value ? <small>{navWords.unsaved}</small> : null}
  </a>
);
