import './digits.css';

interface DigitsProps {
  readonly text: string;
  readonly testId?: string;
}

/** So many there is room for at least, so that 99 and 100 take the same. */
const ROOM = 3;

/**
 * A number that changes with every reading, in room of a set size. Its parent may be laid out in any way; the inner box
 * stands by itself in a plain block, which is what lets a browser lay out these digits and nothing else of the page.
 */
export const Digits = ({ text, testId }: DigitsProps) => (
  <span class="digits-room" style={{ '--digits': String(Math.max(ROOM, text.length)) }}>
    <span class="digits" data-testid={testId}>
      {text}
    </span>
  </span>
);
