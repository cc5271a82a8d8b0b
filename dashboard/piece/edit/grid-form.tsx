import { useState } from 'preact/hooks';
import { withGrid } from '../../../shared/piece/edit.ts';
import { MOST_BAY_COLUMNS, MOST_BAY_ROWS } from '../../../shared/piece/starting.ts';
import { pieceEditorWords as words } from '../../../shared/words/pieces.ts';
import { Field } from '../../setup/fields/field.tsx';
import { readNumber } from '../../setup/fields/number.ts';
import type { MapPartProps } from './map-editor.tsx';

/** The whole number in a text, from 1 to `most`; null for anything else. */
export function readCount(text: string, most: number): number | null {
  const number = readNumber(text);
  return number !== null && Number.isInteger(number) && number >= 1 && number <= most ? number : null;
}

export const countError = (text: string, most: number): string =>
  readCount(text, most) === null ? words.wholeNumber(most) : '';

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
