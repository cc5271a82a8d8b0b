import { useState } from 'preact/hooks';
import { withTape } from '../../../shared/piece/edit.ts';
import type { PieceDraft, SideId } from '../../../shared/piece/piece.ts';
import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { Field, Pick } from '../../setup/fields/field.tsx';
import { countError, readCount } from './count.ts';
import type { MapPartProps } from './map-part.ts';

type Lies = 'across' | 'along';

const nextName = ({ areas }: PieceDraft): string =>
  words.tapeFirst(areas.filter((area) => area.kind === 'tape').length + 1);

/** Adds a tape from border to border, one cell wide, over whatever lies there. */
export function TapeForm({ draft, apply }: MapPartProps) {
  const [name, setName] = useState(nextName(draft));
  const [side, setSide] = useState<SideId>(1);
  const [lies, setLies] = useState<Lies>('across');
  const [line, setLine] = useState<string | null>(null);
  const most = lies === 'across' ? draft.columns : draft.rows;
  const at = line ?? String(Math.ceil(most / 2));
  const add = (): void => {
    const place = readCount(at, most);
    if (place === null) return;
    const across = { row: 0, rows: draft.rows, column: place - 1, columns: 1 };
    const along = { row: place - 1, rows: 1, column: 0, columns: draft.columns };
    const made = withTape(draft, side, name, lies === 'across' ? across : along);
    if (apply(made) && made.kind === 'done') setName(nextName(made.draft));
  };
  return (
    <form
      class="editor-line"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <Field id="tape-name" label={words.tapeName} text={name} onText={setName} />
      {draft.sides.length < 2 ? null : (
        <Pick
          label={words.tapeOn}
          options={draft.sides.map((text, i) => [String(i + 1), text] as const)}
          chosen={String(side)}
          onPick={(picked) => setSide(picked === '1' ? 1 : 2)}
        />
      )}
      <Pick
        label={words.tapeLies}
        options={[
          ['across', words.tapeAcross],
          ['along', words.tapeAlong],
        ]}
        chosen={lies}
        onPick={setLies}
      />
      <Field
        id="tape-at"
        label={words.tapeAt(most)}
        number
        text={at}
        onText={setLine}
        error={countError(at, most)}
      />
      <button type="submit" class="target" data-testid="add-tape">
        {words.addTape}
      </button>
    </form>
  );
}
