import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { Menu } from './menu.tsx';
import css from './page.module.css';

interface Props {
  readonly title: string;
  /** Smaller line under the title: where the block stands, which sale. */
  readonly under?: ComponentChildren;
  readonly back?: { readonly href: string; readonly label: string };
  /** What one came for: first on a phone, top of the second column from 900 px. */
  readonly lead?: ComponentChildren;
  /** The rest of the second column; last on a phone. */
  readonly aside?: ComponentChildren;
  /** What stays at the bottom: the docked answer or the main action. */
  readonly dock?: ComponentChildren;
  /** Leaves out the menu where the dock needs its room: while walking, on a phone. */
  readonly quiet?: boolean;
  /** One column over the whole width: for a table. */
  readonly wide?: boolean;
  readonly children: ComponentChildren;
}

/** A sheet of paper: title, content, and at the bottom what the thumb reaches. */
export function Page({ title, under, back, lead, aside, dock, quiet = false, wide = false, children }: Props) {
  useEffect(() => {
    document.title = title === 'Blockworth' ? title : `${title} – Blockworth`;
  }, [title]);
  return (
    <div
      class={css.page}
      data-docked={dock ? true : undefined}
      data-quiet={quiet || undefined}
      data-wide={wide || undefined}
    >
      <header class={css.head}>
        {back && (
          <a class={css.back} href={back.href}>
            <span aria-hidden="true">‹</span> {back.label}
          </a>
        )}
        <h1 tabIndex={-1}>{title}</h1>
        {under && <div class={css.under}>{under}</div>}
      </header>
      <main class={css.columns} data-two={lead || aside ? true : undefined}>
        {lead && <div class={css.lead}>{lead}</div>}
        <div class={css.column}>{children}</div>
        {aside && <div class={css.aside}>{aside}</div>}
      </main>
      <div class={css.foot}>
        {dock && <div class={css.dock}>{dock}</div>}
        <Menu />
      </div>
    </div>
  );
}

/** A ruled part of a sheet with its own heading. */
export function Section({
  title,
  aside,
  children,
  id,
}: {
  readonly title?: string;
  readonly aside?: ComponentChildren;
  readonly children: ComponentChildren;
  readonly id?: string;
}) {
  return (
    <section class={css.section} id={id}>
      {title && (
        <div class={css.sectionHead}>
          <h2>{title}</h2>
          {aside}
        </div>
      )}
      {children}
    </section>
  );
}
