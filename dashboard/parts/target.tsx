import type { ComponentChildren } from 'preact';
import './target.css';

interface TargetProps {
  readonly onPress: () => void;
  readonly children: ComponentChildren;
  /** The one thing to do on this part of the page. */
  readonly main?: boolean;
  /** For a choice: whether this one is chosen. */
  readonly chosen?: boolean;
  /** What it is for, where the text alone doesn't say. */
  readonly label?: string;
  readonly testId?: string;
  readonly disabled?: boolean;
}

/** Anything that can be pressed: at least 48 px either way, by finger, Enter or Space. */
export function Target({ onPress, children, main, chosen, label, testId, disabled }: TargetProps) {
  const classes = ['target', main === true ? 'target--main' : '', chosen === true ? 'target--chosen' : ''];
  return (
    <button
      type="button"
      class={classes.filter((name) => name !== '').join(' ')}
      onClick={onPress}
      aria-pressed={chosen}
      aria-label={label}
      data-testid={testId}
      disabled={disabled}
    >
      {children}
    </button>
  );
}
