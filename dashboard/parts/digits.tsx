import { type ReadonlySignal, useComputed } from '@preact/signals';
import './digits.css';

interface DigitsProps {
  /** A signal where another number is to be put there without rendering anything. */
  readonly text: string | ReadonlySignal<string>;
  readonly testId?: string;
}

/**
 * A number that changes with every reading, in room of a set size. Its parent may be laid out in any way; the inner box
 * stands by itself in a plain block, which is what lets a browser lay out these digits and nothing else of the page.
 */
export function Digits({ text, testId }: DigitsProps) {
  const room = useComputed(() => (typeof text === 'string' ? '' : roomFor(text.value)));
  return (
    <span class="digits-room" style={{ '--digits': typeof text === 'string' ? roomFor(text) : room.value }}>
      <span class="digits" data-testid={testId}>
        {text}
      </span>
    </span>
  );
}

/** For three figures at least, so that 99 and 100 take the same. */
const roomFor = (text: string): string => String(Math.max(3, text.length));
