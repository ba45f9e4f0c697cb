import { Component, type ComponentType, lazy, type ReactNode, Suspense, useState } from 'react';
import { PartMissing } from './fetch-part.ts';

/** What is shown in the place of a part that did not come, or failed while it was drawn. */
export interface FailedProps {
  /** A sentence. */
  readonly says: string;
  /** Only reloading the page helps. */
  readonly reload: boolean;
  readonly onAgain: () => void;
}

interface BoundaryProps {
  readonly Failed: ComponentType<FailedProps>;
  readonly onAgain: () => void;
  readonly children: ReactNode;
}

/** Catches what fails below it, so that the rest of the page stays. */
export class Boundary extends Component<BoundaryProps, { readonly error: unknown }> {
  override state: { readonly error: unknown } = { error: null };

  static getDerivedStateFromError(error: unknown) {
    return { error };
  }

  override componentDidCatch(error: unknown) {
    if (!(error instanceof PartMissing)) console.error(error);
  }

  override render() {
    const { error } = this.state;
    const { Failed, onAgain, children } = this.props;
    if (error === null) return children;
    const says =
      error instanceof PartMissing
        ? error.message
        : `Something failed here that should not: ${error instanceof Error ? error.message : error}`;
    return <Failed says={says} reload={error instanceof PartMissing && error.reload} onAgain={onAgain} />;
  }
}

/** A part that is fetched when it is first shown, asked for anew as often as the user wants. */
export const lazyPart = (
  load: () => Promise<ComponentType>,
  Failed: ComponentType<FailedProps>,
  waiting: ReactNode = null,
): ComponentType => {
  const fetched = () => lazy(async () => ({ default: await load() }));
  let Shown = fetched();
  return () => {
    const [tries, setTries] = useState(0);
    const again = () => {
      Shown = fetched();
      setTries(tries + 1);
    };
    return (
      <Boundary key={tries} Failed={Failed} onAgain={again}>
        <Suspense fallback={waiting}>
          <Shown />
        </Suspense>
      </Boundary>
    );
  };
};
