import { Component, type ReactNode } from 'react';
import { words } from '../words.ts';

interface State {
  readonly trouble: string | null;
}

/** A mistake of ours must not leave a blank page: what is kept stays kept, and the message can be passed on. */
export class Broken extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { trouble: null };

  static getDerivedStateFromError(trouble: unknown): State {
    return { trouble: trouble instanceof Error ? `${trouble.message}\n${trouble.stack ?? ''}` : String(trouble) };
  }

  override render(): ReactNode {
    const { trouble } = this.state;
    if (trouble === null) return this.props.children;
    return (
      <main className="page">
        <section className="about">
          <h1>{words.broken.title}</h1>
          <p>{words.broken.text}</p>
          <pre>{trouble}</pre>
          <button type="button" className="press" onClick={() => location.reload()}>
            {words.kept.reload}
          </button>
        </section>
      </main>
    );
  }
}
