import type { ComponentChildren, RefObject } from 'preact';
import { useState } from 'preact/hooks';

interface OpeningProps {
  readonly summary: ComponentChildren;
  readonly class?: string;
  readonly testId?: string;
  /** Open from the first, and not to be closed while that holds. */
  readonly held?: boolean;
  /** Its summary, where that takes the focus. */
  readonly summaryRef?: RefObject<HTMLElement>;
  readonly children: () => ComponentChildren;
}

/** Details that are made only once they are opened: what nobody looks at costs nothing with each reading. */
export function Opening(props: OpeningProps) {
  const { summary, class: name, testId, held = false, summaryRef = null, children } = props;
  const [isOpen, setOpen] = useState(held);
  return (
    <details
      class={name}
      data-testid={testId}
      open={isOpen || held}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary ref={summaryRef}>{summary}</summary>
      {isOpen || held ? children() : null}
    </details>
  );
}
