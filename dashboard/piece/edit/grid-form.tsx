import { useState } from 'preact/hooks';
import { withGrid } from '../../../shared/piece/edit.ts';
import { MOST_BAY_COLUMNS, MOST_BAY_ROWS } from '../../../shared/piece/starting.ts';
import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { Field } from '../../setup/fields/field.tsx';
import { countError, readCount } from './count.ts';
import type { MapPartProps } from './map-part.ts';

/** Lays the sides out as bays. */
export function GridForm({ draft, apply }: MapPartProps) {
  const [columns, setColumns] = useState('3');
  const [rows, setRows] = useState('1');
  const layOut = (): void => {
    const [r, c] = [readCount(rows, MOST_BAY_ROWS), readCount(columns, MOST_BAY_COLUMNS)];
    if (r !== null && c !== null) apply(withGrid(draft, r, c));
  };
  return (
    <form
      class="editor-line"
      onSubmit={(event) => {
        event.preventDefault();
        layOut();
      }}
    >
      <Field
        id="grid-columns"
        label={words.bays}
        number
        text={columns}
        onText={setColumns}
        error={countError(columns, MOST_BAY_COLUMNS)}
      />
      <Field
        id="grid-rows"
        label={words.baysAcross}
        number
        text={rows}
        onText={setRows}
        error={countError(rows, MOST_BAY_ROWS)}
      />
      <button type="submit" class="target" data-testid="lay-out">
        {words.layOut}
      </button>
      <p class="quiet">{words.layOutMeans}</p>
    </form>
  );
}
