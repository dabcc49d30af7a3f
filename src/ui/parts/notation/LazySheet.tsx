import { Component, type ReactNode, Suspense } from 'react';

type Props = { readonly children: ReactNode };

/** Notation that could not be loaded is said in its place; the rest of the page goes on. */
class Unloadable extends Component<Props, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { readonly failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? (
      <p role="alert">
        The notation could not be loaded. Check the connection once, then reload this page; after
        that it works without one.
      </p>
    ) : (
      this.props.children
    );
  }
}

/** The place of a sheet that is loaded when it is first shown. */
export function LazySheet({ children }: Props) {
  return (
    <Unloadable>
      <Suspense fallback={<p className="hint">Writing it out…</p>}>{children}</Suspense>
    </Unloadable>
  );
}
