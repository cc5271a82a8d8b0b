import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface OpeningProps {
  readonly summary: ComponentChildren;
  readonly class?: string;
  readonly testId?: string;
  /** Open from the first, and not to be closed while that holds. */
  readonly held?: boolean;
  readonly children: () => ComponentChildren;
}

/** Details that are made only once they are opened: what nobody looks at costs nothing with each reading. */
export function Opening({ summary, class: name, testId, held = false, children }: OpeningProps) {
  const [isOpen, setOpen] = useState(held);
  return (
    <details
      class={name}
      data-testid={testId}
      open={isOpen || held}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{summary}</summary>
      {isOpen || held ? children() : null}
    </details>
  );
}
