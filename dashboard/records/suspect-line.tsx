import { itemWords } from '../../shared/words/records.ts';
import { Note } from '../parts/note.tsx';
import { openItems } from './book.ts';

/** How many areas are suspect, for the other views; nothing where none is. */
export const SuspectLine = () =>
  openItems.value.length === 0 ? null : (
    <Note hatch="beyond" testId="suspect">
      {itemWords.count(openItems.value.length)}
    </Note>
  );
