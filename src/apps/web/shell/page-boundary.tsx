import { Component, type ReactNode } from 'react';
import { Trouble } from '../ui/answer.tsx';

/** Keeps the places in reach when a page breaks, and offers to make it anew. */
export class PageBoundary extends Component<{ readonly children: ReactNode }, { readonly error: unknown }> {
  override state: { readonly error: unknown } = { error: null };

  static getDerivedStateFromError(error: unknown): { readonly error: unknown } {
    return { error };
  }

  override render(): ReactNode {
    if (this.state.error === null) return this.props.children;
    return <Trouble error={this.state.error} retry={() => this.setState({ error: null })} />;
  }
}
