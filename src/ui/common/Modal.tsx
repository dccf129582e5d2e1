import { Dialog } from '@base-ui/react/dialog';
import { useLayoutEffect, useRef } from 'react';

interface ModalProps {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly wide?: boolean;
  /** Stands at the right, where it covers the properties and leaves the drawing in sight. */
  readonly aside?: boolean;
  readonly children: React.ReactNode;
  readonly foot?: React.ReactNode;
}

const TYPED =
  'input:not([type="checkbox"], [type="radio"], [type="file"], :disabled), textarea:not(:disabled)';
const CHOSEN = 'select:not(:disabled), input:not(:disabled)';

/** What has the focus at first: a field to type in, else one to choose in, else the body itself. */
const firstOf = (body: HTMLElement | null): HTMLElement | null =>
  body?.querySelector<HTMLElement>(TYPED) ?? body?.querySelector<HTMLElement>(CHOSEN) ?? body;

/**
 * A dialog with a head, a body that scrolls and an optional row of buttons. Escape closes it. Its first field has the
 * focus, so that what is typed at once goes where it is meant, and Enter does what the dialog is for.
 */
export const Modal = ({ title, open, onClose, wide, aside, children, foot }: ModalProps) => {
  const body = useRef<HTMLDivElement>(null);
  return (
    <Dialog.Root open={open} onOpenChange={(o) => (o ? undefined : onClose())}>
      <Dialog.Portal>
        <Dialog.Backdrop className={aside ? 'dialog-back clear' : 'dialog-back'} />
        <Dialog.Popup
          className={wide ? 'dialog wide' : aside ? 'dialog aside' : 'dialog'}
          initialFocus={() =>
            body.current?.contains(document.activeElement) ? false : firstOf(body.current)
          }
        >
          <div className="dialog-head">
            <Dialog.Title className="dialog-title">{title}</Dialog.Title>
            <Dialog.Close className="button quiet">Close</Dialog.Close>
          </div>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long body has to scroll by keyboard too */}
          <div ref={body} className="dialog-body" tabIndex={0}>
            {children}
          </div>
          <AtOnce body={body} />
          {foot ? <div className="dialog-foot">{foot}</div> : null}
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
};

/** Stands after the body, whose ref is there by then. Takes the focus with the first painting: a key pressed right after the one that opened it is not lost. */
const AtOnce = ({ body }: { readonly body: React.RefObject<HTMLElement | null> }) => {
  useLayoutEffect(() => {
    const now = body.current;
    if (now && !now.contains(document.activeElement)) firstOf(now)?.focus();
  }, [body]);
  return null;
};
