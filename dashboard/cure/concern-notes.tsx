import type { AirConcern } from '../../shared/messages/cure.ts';
import { concernText } from '../../shared/words/air.ts';
import { Note } from '../parts/note.tsx';
import { unit } from '../parts/unit.ts';

/** What is amiss with the air, the same wherever it is told. Two cements may have limits of one kind: the text tells them apart. */
export const ConcernNotes = ({ concerns }: { readonly concerns: readonly AirConcern[] }) => (
  <>
    {concerns.map((concern) => {
      const text = concernText(concern, unit.value);
      return (
        <Note key={text} hatch="act-soon" testId="air-concern">
          <strong>{text}</strong>
        </Note>
      );
    })}
  </>
);
