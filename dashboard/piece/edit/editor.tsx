import { useEffect } from 'preact/hooks';
import { mirrored } from '../../../shared/piece/edit.ts';
import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { pieceWords } from '../../../shared/words/pieces.ts';
import { viewOnly } from '../../link/daemon.ts';
import { Target } from '../../parts/target.tsx';
import { Conflict } from './conflict.tsx';
import { begin, drafts, dropForm, formNow, isSaving, NEW, said, save, setForm } from './drafts.ts';
import { draftOf, newForm, oppositeName, type PieceForm } from './form.ts';
import { MapEditor } from './map-editor.tsx';
import { PieceFields } from './piece-fields.tsx';
import './edit.css';

const addressOf = (id: string): string => `#piece/${encodeURIComponent(id)}`;

/** Makes a piece, or changes one: its name, its sides, its map. */
export function Editor({ id }: { readonly id: string | null }) {
  const key = id ?? NEW;
  useEffect(begin, [key]);
  const form = formNow(key);
  if (form === null) return <p role="status">{pieceWords.noSuch}</p>;
  if (viewOnly.value) return <p>{words.viewOnly}</p>;
  const send = async (what: PieceForm): Promise<void> => {
    if (await save(key, what)) location.hash = addressOf(what.id);
  };
  return (
    <section class="editor" aria-labelledby="editor-title" data-testid="editor">
      <h2 id="editor-title" class="piece-title">
        {id === null ? words.newTitle : words.title(form.name)}
      </h2>
      <Conflict of={key} form={form} onSave={(what) => void send(what)} />
      <PieceFields of={key} form={form} />
      <MapEditor of={key} form={form} />
      <div class="editor-save">
        <Target main disabled={isSaving.value} testId="save-piece" onPress={() => void send(form)}>
          {isSaving.value ? words.saving : words.save(form.basedOn + 1)}
        </Target>
        {drafts.value[key] === undefined ? null : <Target onPress={() => dropForm(key)}>{words.drop}</Target>}
        <a class="way" href={id === null ? '#piece' : addressOf(id)}>
          {id === null ? pieceWords.back : pieceWords.backTo(form.name)}
        </a>
        <p role="status" data-testid="editor-said">
          {said.value}
        </p>
      </div>
      {id === null ? null : <Copies form={form} onSave={(what) => void send(what)} />}
    </section>
  );
}

interface CopiesProps {
  readonly form: PieceForm;
  readonly onSave: (form: PieceForm) => void;
}

/** Goes on with a new piece that has been begun from another. */
function begun(made: PieceForm): void {
  setForm(NEW, made);
  location.hash = '#piece/new';
}

/** Another piece like it, and putting it away. */
function Copies({ form, onSave }: CopiesProps) {
  const mirror = (): void => {
    const made = mirrored(draftOf(form), oppositeName(form.name));
    if (made.kind === 'done') begun(newForm(made.draft));
    else said.value = made.why;
  };
  const copy = (): void => begun(newForm({ ...draftOf(form), name: words.copyName(form.name).slice(0, 60) }));
  return (
    <div class="editor-copies">
      <div class="choice-row">
        <Target testId="mirror" onPress={mirror}>
          {words.mirror}
        </Target>
        <Target testId="copy" onPress={copy}>
          {words.copy}
        </Target>
        <Target testId="archive" onPress={() => onSave({ ...form, archived: !form.archived })}>
          {form.archived ? words.unarchive : words.archive}
        </Target>
      </div>
      <p class="quiet">{form.archived ? words.isAway : words.archiveMeans}</p>
    </div>
  );
}
