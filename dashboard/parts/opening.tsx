import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface OpeningProps {
  readonly summary: ComponentChildren;
  readonly class?: string;
  readonly testId?: string;
  readonly children: () => ComponentChildren;
}

/** Details that are made only once they are opened: what nobody looks at costs nothing with each reading. */
export function Opening({ summary, class: name, testId, children }: OpeningProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      class={name}
      data-testid={testId}
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{summary}</summary>
      {isOpen ? children() : null}
    </details>
  );
}
