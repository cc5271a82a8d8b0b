import { useSignal } from '@preact/signals';
import { fieldWords } from '../../../shared/words/setup.ts';
import { Field } from './field.tsx';

interface KeptFieldProps {
  readonly id: string;
  readonly label: string;
  readonly fullLabel?: string;
  /** What stands there as the daemon has it. */
  readonly now: string;
  /** What is wrong with a text; empty where nothing is. */
  readonly check: (text: string) => string;
  /** Keeps it; false where that failed, so that the text stays. */
  readonly keep: (text: string) => Promise<boolean>;
  readonly means?: string;
  readonly number?: boolean;
  readonly sign?: string;
  readonly disabled: boolean;
}

/** A field whose text takes effect by Enter, or once the focus moves on; Escape puts back what stood there. */
export function KeptField({ now, check, keep, means, ...rest }: KeptFieldProps) {
  const typed = useSignal<string | null>(null);
  const error = useSignal('');
  const done = async (): Promise<void> => {
    const text = typed.peek();
    if (text === null) return;
    error.value = check(text);
    if (error.peek() !== '') return;
    const kept = text.trim() === now || (await keep(text));
    if (kept && typed.peek() === text) typed.value = null;
  };
  return (
    <Field
      {...rest}
      text={typed.value ?? now}
      error={error.value}
      means={
        typed.value === null ? means : [means, fieldWords.keep].filter((one) => one !== undefined).join(' ')
      }
      onText={(text) => {
        typed.value = text;
        error.value = '';
      }}
      onDone={() => void done()}
      onEscape={() => {
        typed.value = null;
        error.value = '';
      }}
    />
  );
}

/** A check of a name: something stands there, and not too much. */
export const nameCheck =
  (most: number, mayBeEmpty = false) =>
  (text: string): string => {
    const { length } = text.trim();
    if (length === 0) return mayBeEmpty ? '' : fieldWords.empty;
    return length > most ? fieldWords.tooLong(most, length) : '';
  };
