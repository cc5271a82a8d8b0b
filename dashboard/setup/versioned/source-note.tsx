import { Note } from '../../parts/note.tsx';
import './versioned.css';

interface SourceNoteProps {
  /** Where the values come from, as it is saved; null: unconfirmed. */
  readonly confirmed: string | null;
  /** It is entered, but not saved yet. */
  readonly entered: boolean;
  readonly words: {
    readonly unconfirmedTitle: string;
    readonly unconfirmed: string;
    readonly willConfirm: string;
  };
  readonly testId: string;
}

/** Where values come from; without that they are unconfirmed, and what to do is said. */
export const SourceNote = ({ confirmed, entered, words, testId }: SourceNoteProps) =>
  confirmed === null ? (
    <Note hatch="know" testId={testId}>
      <p>
        <strong class="form-unconfirmed">{words.unconfirmedTitle}.</strong>{' '}
        {entered ? words.willConfirm : words.unconfirmed}
      </p>
    </Note>
  ) : (
    <p data-testid="confirmed">{confirmed}</p>
  );
