import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
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
  const heading = useRef<HTMLHeadingElement>(null);
  const id = useId();
  // Opened and closed with the drawing, not after it: closed while still in the page, the browser gives the focus back to what had
  // it, and a key pressed at once finds it there.
  useLayoutEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
    // Left to itself the browser goes to the first thing to press, and a long sheet opens with its head out of sight.
    heading.current?.focus();
    return () => element?.close();
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
        <h2 id={id} ref={heading} tabIndex={-1}>
          {title}
        </h2>
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
