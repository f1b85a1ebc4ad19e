import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import type { Mark } from '../core/records.ts';
import { useApp } from '../ui/app.ts';
import { SelectField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import { MarkSheet } from './mark-sheet.tsx';
import css from './marks-editor.module.css';
import { stampedSize } from './stamped-size.ts';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

/** Marks on a block: those written down, and the way to add one. Used on the walk and in the story. */
export function MarksEditor({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const actions = useActions();
  const [open, setOpen] = useState<string>();
  const add = (kind: string): void => {
    if (kind !== '') setOpen(actions.addMark(of.block, { kind }));
  };
  return (
    <div class={css.marks}>
      {of.marks.length > 0 && (
        <ul class={css.list}>
          {of.marks.map((mark) => (
            <MarkRow key={mark.id} of={of} mark={mark} onOpen={() => setOpen(mark.id)} />
          ))}
        </ul>
      )}
      <SelectField
        label="Add a mark"
        hint="Photograph it first. Never sand, oil or wax over a mark."
        value=""
        options={[
          { id: '', label: 'What kind is it?' },
          ...Object.entries(catalogue.marks).map(([id, { term }]) => ({ id, label: term })),
        ]}
        onChange={add}
      />
      {open !== undefined && <MarkSheet of={of} markId={open} onClose={() => setOpen(undefined)} />}
    </div>
  );
}

function MarkRow({ of, mark, onOpen }: { readonly of: BlockCase; readonly mark: Mark; readonly onOpen: () => void }) {
  const { catalogue } = useApp();
  const { zoneTerm } = useNames(of);
  const kind = entry(catalogue.marks, mark.kind);
  const size = kind?.isSize ? stampedSize(of, mark) : undefined;
  return (
    <li>
      <button type="button" class={css.row} onClick={onOpen}>
        <span class={css.text}>{mark.text.trim() === '' ? 'Not transcribed yet' : mark.text.trim()}</span>
        <small>
          {kind?.term ?? mark.kind}, {zoneTerm(mark.zone).toLocaleLowerCase('en-GB')}
          {mark.keep && ', to keep'}
          {size && `. ${size}`}
        </small>
      </button>
    </li>
  );
}
