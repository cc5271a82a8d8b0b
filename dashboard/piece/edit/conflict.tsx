import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';
import { apart, drafts, dropForm, newerThan } from './drafts.ts';
import type { PieceForm } from './form.ts';

interface ConflictProps {
  readonly of: string;
  readonly form: PieceForm;
  readonly onSave: (form: PieceForm) => void;
}

/** Somebody else has saved a newer version meanwhile: nothing of either is lost, whatever is chosen. */
export function Conflict({ of, form, onSave }: ConflictProps) {
  const theirs = drafts.value[of] === undefined ? null : newerThan(form);
  if (theirs === null) return null;
  return (
    <div role="alert" data-testid="piece-conflict">
      <Note hatch="act-soon">
        <div class="piece-conflict">
          <h3>{words.conflict(theirs.version)}</h3>
          <p>{words.conflictMeans}</p>
          <p>{words.theirs(theirs.name, theirs.areas.length)}</p>
          <p>{words.mine(form.name, form.map.areas.length)}</p>
          <div class="choice-row">
            <Target testId="save-mine" onPress={() => onSave({ ...form, basedOn: theirs.version })}>
              {words.saveMine(theirs.version + 1)}
            </Target>
            <Target testId="save-apart" onPress={() => onSave(apart(form))}>
              {words.saveApart}
            </Target>
            <Target testId="take-theirs" onPress={() => dropForm(of)}>
              {words.takeTheirs}
            </Target>
          </div>
        </div>
      </Note>
    </div>
  );
}
