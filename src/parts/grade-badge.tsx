import type { Grade } from '../core/catalogue.ts';
import { useApp } from '../ui/app.ts';
import css from './grade-badge.module.css';

/** A grade as number and word: filled the more, the worse. */
export function GradeBadge({ grade }: { readonly grade: Grade }) {
  const { catalogue } = useApp();
  return (
    <span class={css.badge} data-grade={grade}>
      <b>{grade}</b> {catalogue.gradeWords[grade].term.toLocaleLowerCase('en-GB')}
    </span>
  );
}
