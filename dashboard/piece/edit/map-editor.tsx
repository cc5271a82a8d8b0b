import { useState } from 'preact/hooks';
import { type Edited, leftOut, merged, renamed } from '../../../shared/piece/edit.ts';
import type { Area, PieceDraft, SideId } from '../../../shared/piece/piece.ts';
import { pieceEditorWords as words } from '../../../shared/words/piece-editor.ts';
import { Opening } from '../../parts/opening.tsx';
import { Target } from '../../parts/target.tsx';
import { Field } from '../../setup/fields/field.tsx';
import { isFine, Sheet } from '../sheet.tsx';
import { changeMap, past, undoMap } from './drafts.ts';
import { draftOf, type PieceForm, withMap } from './form.ts';
import { GridForm } from './grid-form.tsx';
import type { MapPartProps } from './map-part.ts';
import { TapeForm } from './tape-form.tsx';

interface MapEditorProps {
  readonly of: string;
  readonly form: PieceForm;
}

const NONE: ReadonlySet<string> = new Set();

/** The areas of each side: chosen by tapping, then merged, left out or renamed; bays laid out, tapes added. */
export function MapEditor({ of, form }: MapEditorProps) {
  const [chosen, setChosen] = useState(NONE);
  const [trouble, setTrouble] = useState('');
  const draft = draftOf(form);
  const areas = draft.areas.filter((area) => chosen.has(area.id));
  const apply = (edited: Edited): boolean => {
    setTrouble(edited.kind === 'done' ? '' : edited.why);
    if (edited.kind !== 'done') return false;
    changeMap(of, form, withMap(form, edited.draft));
    setChosen(NONE);
    return true;
  };
  const toggle = ({ id }: Area): void => {
    const without = new Set([...chosen].filter((one) => one !== id));
    setTrouble('');
    setChosen(chosen.has(id) ? without : new Set([...chosen, id]));
  };
  return (
    <section class="editor-map" aria-labelledby="editor-map-title">
      <h3 id="editor-map-title">{words.map}</h3>
      <p class="quiet">{words.mapMeans}</p>
      <div class={isFine(draft) ? 'facing facing--fine' : 'facing'}>
        {draft.sides.map((name, i) => {
          const side: SideId = i === 0 ? 1 : 2;
          return (
            <div key={side} class="face">
              <h4 class="face-name">{name}</h4>
              <Sheet
                piece={draft}
                side={side}
                schedule={null}
                heat={null}
                here={null}
                next={null}
                onArea={toggle}
                chosen={chosen}
              />
            </div>
          );
        })}
      </div>
      <Chosen draft={draft} areas={areas} apply={apply} onNone={() => setChosen(NONE)} />
      <p role="alert" class="editor-trouble" data-testid="map-trouble">
        {trouble}
      </p>
      <div class="choice-row">
        <Target disabled={past.value.length === 0} testId="undo-map" onPress={() => undoMap(of)}>
          {words.undo}
        </Target>
      </div>
      <Opening summary={words.grid} testId="grid">
        {() => <GridForm draft={draft} apply={apply} />}
      </Opening>
      <Opening summary={words.tape} testId="tape">
        {() => <TapeForm draft={draft} apply={apply} />}
      </Opening>
    </section>
  );
}

interface ChosenProps extends MapPartProps {
  readonly areas: readonly Area[];
  readonly onNone: () => void;
}

/** What can become of the areas that are chosen. */
function Chosen({ draft, areas, apply, onNone }: ChosenProps) {
  const ids = areas.map((area) => area.id);
  const [only] = areas;
  return (
    <div class="editor-chosen" data-testid="chosen">
      <p role="status">{ids.length === 0 ? words.noneChosen : words.chosen(ids.length)}</p>
      {only !== undefined && areas.length === 1 ? (
        <Rename key={only.id} draft={draft} area={only} apply={apply} />
      ) : null}
      <div class="choice-row">
        <Target disabled={ids.length < 2} testId="merge" onPress={() => apply(merged(draft, ids))}>
          {words.merge}
        </Target>
        <Target disabled={ids.length === 0} testId="leave-out" onPress={() => apply(allLeftOut(draft, ids))}>
          {words.leaveOut}
        </Target>
        <Target disabled={ids.length === 0} onPress={onNone}>
          {words.unchoose}
        </Target>
      </div>
    </div>
  );
}

/** All of them, or none where one has to stay. */
const allLeftOut = (draft: PieceDraft, ids: readonly string[]): Edited =>
  ids.reduce<Edited>((edited, id) => (edited.kind === 'done' ? leftOut(edited.draft, id) : edited), {
    kind: 'done',
    draft,
  });

function Rename({ draft, area, apply }: MapPartProps & { readonly area: Area }) {
  const [name, setName] = useState(area.name);
  return (
    <form
      class="editor-line"
      onSubmit={(event) => {
        event.preventDefault();
        apply(renamed(draft, area.id, name));
      }}
    >
      <Field id="area-name" label={words.areaName} text={name} onText={setName} />
      <button type="submit" class="target">
        {words.rename}
      </button>
    </form>
  );
}
