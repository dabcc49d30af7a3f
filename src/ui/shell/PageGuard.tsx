import { Component, type ReactNode } from 'react';

type Props = {
  readonly children: ReactNode;
  /** Takes the last change of the song back. */
  readonly onUndo: () => void;
};

/**
 * Keeps head and foot where a page cannot be drawn, by a fault of the program: the song is saved, so
 * the last change can be taken back or another page opened.
 */
export class PageGuard extends Component<Props, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { readonly failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    const drawAgain = () => this.setState({ failed: false });
    return (
      <div role="alert" className="page-fault">
        <p>
          A fault of Vampwright keeps this page from being drawn. Your song is safe: go to another
          page, draw this one again, or take the last change back.
        </p>
        <p className="row">
          <button type="button" onClick={drawAgain}>
            Draw it again
          </button>
          <button
            type="button"
            onClick={() => {
              this.props.onUndo();
              drawAgain();
            }}
          >
            Undo the last change
          </button>
        </p>
      </div>
    );
  }
}
