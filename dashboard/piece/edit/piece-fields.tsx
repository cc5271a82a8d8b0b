import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { Field, Pick } from '../../setup/fields/field.tsx';
import { changeMap, isTried, setForm } from './drafts.ts';
import { errorsOf, type PieceForm, withSides } from './form.ts';

interface PieceFieldsProps {
  readonly of: string;
  readonly form: PieceForm;
}

/** What is wrong, once a save was tried. */
const shown = (error: string | undefined): string => (isTried.value ? (error ?? '') : '');

/** Name, frame, sides and size. What is wrong with a name is said once a save was tried, a length that is none at once. */
export function PieceFields({ of, form }: PieceFieldsProps) {
  const errors = errorsOf(form);
  const change = (part: Partial<PieceForm>): void => setForm(of, { ...form, ...part });
  return (
    <div class="editor-fields">
      <Field
        id="piece-name"
        label={words.name}
        means={words.nameMeans}
        text={form.name}
        error={shown(errors.name)}
        onText={(name) => change({ name })}
      />
      <Field
        id="piece-frame"
        label={words.frame}
        means={words.frameMeans}
        text={form.frame}
        error={shown(errors.frame)}
        onText={(frame) => change({ frame })}
      />
      <Pick
        label={words.sides}
        options={[
          ['1', words.one],
          ['2', words.two],
        ]}
        chosen={form.sides.length === 1 ? '1' : '2'}
        onPick={(count) => changeMap(of, form, withSides(form, count === '1' ? 1 : 2))}
      />
      {form.sides.map((name, i) => (
        <Field
          key={i}
          id={`piece-side-${i}`}
          label={words.sideName(i + 1)}
          text={name}
          error={shown(errors.sides[i])}
          onText={(text) => change({ sides: form.sides.map((side, at) => (at === i ? text : side)) })}
        />
      ))}
      <div class="editor-sizes">
        <Field
          id="piece-length"
          label={words.length}
          number
          sign={words.size}
          text={form.length}
          error={errors.length}
          onText={(length) => change({ length })}
        />
        <Field
          id="piece-width"
          label={words.width}
          number
          sign={words.size}
          text={form.width}
          error={errors.width}
          onText={(width) => change({ width })}
        />
      </div>
      <p class="quiet">{words.sizeMeans}</p>
    </div>
  );
}
