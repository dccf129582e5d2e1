import { Component, type ErrorInfo, type ReactNode } from 'react';

interface FaultProps {
  readonly children: ReactNode;
  readonly onSaveFile: () => void;
  /** Changes when another screen is shown; a fault of the last one is then forgotten. */
  readonly screen: string;
}

/** Keeps a fault of one screen from taking the rest along: says so, and lets the person save and go on. */
export class Fault extends Component<
  FaultProps,
  { readonly error: Error | undefined; readonly screen: string }
> {
  override state = { error: undefined as Error | undefined, screen: this.props.screen };

  static getDerivedStateFromError(error: Error): { error: Error } {
    return { error };
  }

  static getDerivedStateFromProps(
    props: FaultProps,
    state: { screen: string },
  ): { error: undefined; screen: string } | null {
    return props.screen === state.screen ? null : { error: undefined, screen: props.screen };
  }

  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    if (!this.state.error) return this.props.children;
    return (
      <div className="fault" role="alert">
        <h2>This screen met a fault of the program</h2>
        <p>The plan is not affected. {this.state.error.message}</p>
        <p>
          <button type="button" className="button" onClick={() => this.setState({ error: undefined })}>
            Show it again
          </button>{' '}
          <button type="button" className="button" onClick={this.props.onSaveFile}>
            Save plan file…
          </button>
        </p>
      </div>
    );
  }
}
