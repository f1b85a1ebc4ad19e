import css from './menu.module.css';
import { path } from './router.tsx';

const places = [
  { href: '#/', label: 'Shelf', under: /^\/($|look|block|quarantine)/ },
  { href: '#/bench', label: 'Bench', under: /^\/bench/ },
  { href: '#/sales', label: 'Sales', under: /^\/(sale|lot|haggle)/ },
  { href: '#/handbook', label: 'Handbook', under: /^\/handbook/ },
  { href: '#/settings', label: 'Settings', under: /^\/(settings|keeping)/ },
] as const;

/** The five places of the app: a row at the thumb on a phone, a column at the left from 900 px. */
export function Menu() {
  return (
    <nav class={css.menu} aria-label="Places">
      {places.map(({ href, label, under }) => (
        <a key={href} href={href} aria-current={under.test(path.value) ? 'page' : undefined}>
          {label}
        </a>
      ))}
    </nav>
  );
}
