import { type ReactNode, useEffect, useRef } from 'react';
import { Missing } from '../../parts/missing.tsx';
import { flightCommands } from '../run/commands.ts';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly className?: string;
  /** It says itself what is missing. */
  readonly saysMissing?: boolean;
}

/** A sheet of paper over the page: the flight stands still while it lies there. Escape puts it away. */
export const SheetOver = ({ title, onClose, children, className = '', saysMissing = false }: SheetProps) => {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (!element) return;
    if (!element.open) element.showModal();
    element.querySelector<HTMLElement>('[data-first]')?.focus();
    flightCommands()?.cover(true);
    return () => {
      if (element.open) element.close();
      flightCommands()?.cover(false);
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className={`sheet ${className}`}
      aria-labelledby="title-sheet"
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <h2 id="title-sheet">{title}</h2>
      {children}
      {saysMissing ? null : <Missing />}
    </dialog>
  );
};
