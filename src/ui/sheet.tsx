import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { Button } from './button.tsx';
import css from './sheet.module.css';

/** A sheet over the page, from below on a phone. Closing it keeps everything: what was entered is already saved. */
export function Sheet({
  title,
  onClose,
  closeLabel = 'Done',
  foot,
  children,
}: {
  readonly title: string;
  readonly onClose: () => void;
  readonly closeLabel?: string;
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const element = dialog.current;
    const opener = document.activeElement;
    if (element && !element.open) element.showModal();
    return () => {
      element?.close();
      // The sheet is out of the page by now, and the browser gives the focus back only from one that is in it.
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus({ preventScroll: true });
    };
  }, []);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a click beside the sheet closes it; by key, Escape does (onCancel)
    <dialog
      ref={dialog}
      class={css.sheet}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        if (event.target === dialog.current) onClose();
      }}
    >
      <div class={css.paper}>
        <h2 id={id}>{title}</h2>
        {children}
        <div class={css.foot}>
          {foot}
          <Button look="main" wide onPress={onClose}>
            {closeLabel}
          </Button>
        </div>
      </div>
    </dialog>
  );
}
