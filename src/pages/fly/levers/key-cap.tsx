import { keyCap } from '../../../input/actions.ts';
import { Arrow } from './arrow.tsx';

const ARROWS = { ArrowUp: 'up', ArrowDown: 'down', ArrowLeft: 'left', ArrowRight: 'right' } as const;

const isArrow = (name: string): name is keyof typeof ARROWS => name in ARROWS;

/** A key as it looks on the keyboard; `name` is its `KeyboardEvent.key`. */
export const KeyCap = ({ name }: { readonly name: string }) =>
  isArrow(name) ? (
    <kbd>
      <Arrow to={ARROWS[name]} />
      <span className="only-heard">{`${ARROWS[name]} arrow`}</span>
    </kbd>
  ) : (
    <kbd>{keyCap(name)}</kbd>
  );
