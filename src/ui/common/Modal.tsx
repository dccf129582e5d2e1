import { Dialog } from '@base-ui/react/dialog';

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

/** A dialog with a head, a body that scrolls and an optional row of buttons. Escape closes it. */
export const Modal = ({ title, open, onClose, wide, aside, children, foot }: ModalProps) => (
  <Dialog.Root open={open} onOpenChange={(o) => (o ? undefined : onClose())}>
    <Dialog.Portal>
      <Dialog.Backdrop className={aside ? 'dialog-back clear' : 'dialog-back'} />
      <Dialog.Popup className={wide ? 'dialog wide' : aside ? 'dialog aside' : 'dialog'}>
        <div className="dialog-head">
          <Dialog.Title className="dialog-title">{title}</Dialog.Title>
          <Dialog.Close className="button quiet">Close</Dialog.Close>
        </div>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long body has to scroll by keyboard too */}
        <div className="dialog-body" tabIndex={0}>
          {children}
        </div>
        {foot ? <div className="dialog-foot">{foot}</div> : null}
      </Dialog.Popup>
    </Dialog.Portal>
  </Dialog.Root>
);
