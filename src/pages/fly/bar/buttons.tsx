import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from 'react';
import { type ActionId, actionOf, ariaShortcut, keyCap, keysOf } from '../../../input/actions.ts';
import { useStore } from '../../store.ts';
import { hold, press } from '../run/commands.ts';
import '../sheets/own-keys.ts';

interface ButtonProps {
  readonly action: ActionId;
  readonly children: ReactNode;
  /** For buttons that stay pressed. */
  readonly pressed?: boolean;
  readonly disabled?: boolean;
  readonly className?: string;
  /** Instead of the action's own name, where the words on the button say more. */
  readonly label?: string;
}

const titleOf = (action: ActionId): string => {
  const [key] = keysOf(action);
  const { label } = actionOf(action);
  return key === undefined ? label : `${label} — key ${keyCap(key)}`;
};

/** Names of keys are written anew when keys change. */
const useKeyNames = (): unknown => useStore((s) => s.settings.keys);

/** A button for something that is asked for once. */
export const ActionButton = ({ action, children, pressed, disabled, className, label }: ButtonProps) => {
  useKeyNames();
  return (
    <button
      type="button"
      className={className}
      aria-label={label ?? actionOf(action).label}
      aria-keyshortcuts={ariaShortcut(action)}
      aria-pressed={pressed}
      disabled={disabled}
      title={titleOf(action)}
      onClick={() => press(action)}
    >
      {children}
    </button>
  );
};

/** A button that acts while it is held, with mouse, finger, Space or Enter. */
export const HoldButton = ({ action, children, className, label }: ButtonProps) => {
  const down = useRef(false);
  useKeyNames();
  const set = (to: boolean) => {
    if (down.current === to) return;
    down.current = to;
    hold(action, to);
  };
  const onPointerDown = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    set(true);
  };
  const onKey = (to: boolean) => (event: KeyboardEvent) => {
    if (event.key !== ' ' && event.key !== 'Enter') return;
    event.preventDefault();
    set(to);
  };
  return (
    <button
      type="button"
      className={className}
      aria-label={label ?? actionOf(action).label}
      aria-keyshortcuts={ariaShortcut(action)}
      title={titleOf(action)}
      onPointerDown={onPointerDown}
      onPointerUp={() => set(false)}
      onPointerCancel={() => set(false)}
      onKeyDown={onKey(true)}
      onKeyUp={onKey(false)}
      onBlur={() => set(false)}
      onContextMenu={(event) => event.preventDefault()}
    >
      {children}
    </button>
  );
};
