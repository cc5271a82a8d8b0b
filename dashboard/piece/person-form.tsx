import { useId, useState } from 'preact/hooks';
import { personWords } from '../../shared/words/pieces.ts';
import { keep } from '../parts/browser.ts';
import { Target } from '../parts/target.tsx';
import { Field } from '../setup/fields/field.tsx';

const NAME = 'person';
const BY_AT_MOST = 80;
const WHY_AT_MOST = 500;

interface PersonFormProps {
  readonly label: string;
  readonly send: string;
  readonly onSend: (by: string, why: string) => void;
  readonly onNever: () => void;
  /** Where a reason is asked for too: what it is called, and what is said where it is missing. */
  readonly reason?: { readonly label: string; readonly missing: string };
}

/** Asks who says it; the name is remembered in this browser. */
export function PersonForm({ label, send, onSend, onNever, reason }: PersonFormProps) {
  const [by, setBy] = useState(keep.read(NAME) ?? '');
  const [why, setWhy] = useState('');
  const [tried, setTried] = useState(false);
  const id = useId();
  const byError = lengthError(by, BY_AT_MOST, personWords.missing);
  const whyError = reason === undefined ? '' : lengthError(why, WHY_AT_MOST, reason.missing);
  const trySend = (): void => {
    setTried(true);
    if (byError !== '' || whyError !== '') return;
    keep.write(NAME, by.trim());
    onSend(by.trim(), why.trim());
  };
  return (
    <form
      class="person"
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault();
        trySend();
      }}
    >
      <Field id={`${id}-by`} label={personWords.by} text={by} onText={setBy} error={tried ? byError : ''} />
      {reason === undefined ? null : (
        <Field
          id={`${id}-why`}
          label={reason.label}
          text={why}
          onText={setWhy}
          error={tried ? whyError : ''}
        />
      )}
      <div class="choice-row">
        <button type="submit" class="target target--chosen">
          {send}
        </button>
        <Target onPress={onNever}>{personWords.never}</Target>
      </div>
    </form>
  );
}

function lengthError(text: string, most: number, missing: string): string {
  const { length } = text.trim();
  if (length === 0) return missing;
  return length > most ? personWords.tooLong(most) : '';
}
