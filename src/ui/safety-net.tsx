import { Component, type ComponentChildren } from 'preact';
import { sentenceOf } from '../text/errors.ts';
import { Button } from './button.tsx';
import { Page } from './page.tsx';

/** Under every screen: a screen that cannot be drawn says so and leaves the rest of the app standing. */
export class SafetyNet extends Component<{ readonly children: ComponentChildren }, { error?: unknown }> {
  static override getDerivedStateFromError(error: unknown): { error: unknown } {
    return { error };
  }

  override componentDidCatch(error: unknown): void {
    // For whoever is asked to help: the sentence on screen does not name what broke.
    console.error(error);
  }

  override render() {
    const { error } = this.state;
    if (error === undefined) return this.props.children;
    return (
      <Page title="This page cannot be shown">
        <p>{sentenceOf(error)}</p>
        <p>
          <Button href="#/">To the shelf</Button> <Button onPress={() => location.reload()}>Reload</Button>
        </p>
      </Page>
    );
  }
}
