import { useSignal } from '@preact/signals';
import type { IronDial } from '../../shared/messages/dial.ts';
import type { IronLive } from '../../shared/messages/live.ts';
import { dialToldWords } from '../../shared/words/dial.ts';
import { commandWords } from '../../shared/words/page.ts';
import { useDial } from '../dial/dials.ts';
import { ask } from '../link/commands.ts';
import { Target } from '../parts/target.tsx';
import { Field } from '../setup/fields/field.tsx';
import { readNumber } from '../setup/fields/number.ts';

type Mark = NonNullable<IronLive['dial']>['mark'] | null;

/** What the dial stands at, as the user says: a mark that is charted by one touch, another one as a number. */
export function DialTold({ iron }: { readonly iron: IronLive }) {
  const dial = useDial(iron.id);
  const told = iron.dial?.mark ?? null;
  return (
    <div class="dial-told">
      <div class="choice-row" role="group" aria-label={dialToldWords.title}>
        {marksToOffer(dial, told).map((mark) => (
          <Target
            key={mark}
            chosen={told === mark}
            disabled={iron.session === null}
            onPress={() => say(iron, mark)}
          >
            {dialToldWords.mark(String(mark))}
          </Target>
        ))}
        {told === null ? null : (
          <Target onPress={() => say(iron, null)}>{`Dial ${dialToldWords.notSaid}`}</Target>
        )}
      </div>
      <AnotherMark iron={iron} />
    </div>
  );
}

/** More than this would fill the page. */
const MOST_OFFERED = 8;

function marksToOffer(dial: IronDial | null, told: Mark): readonly (number | string)[] {
  const charted = (dial?.chart.points ?? []).map((p) => p.mark).slice(0, MOST_OFFERED);
  if (told === null || charted.some((mark) => mark === told)) return charted;
  return typeof told === 'number' ? [...charted, told].sort((a, b) => a - b) : [...charted, told];
}

function AnotherMark({ iron }: { readonly iron: IronLive }) {
  const text = useSignal('');
  const error = useSignal('');
  const done = (): void => {
    if (text.peek().trim() === '') return;
    const mark = readNumber(text.peek());
    if (mark === null || mark < 0 || mark > 1000) {
      error.value = dialToldWords.wrong;
      return;
    }
    text.value = '';
    say(iron, mark);
  };
  return (
    <>
      <div class="dial-another">
        <Field
          id={`dial-${iron.id}`}
          label={dialToldWords.other}
          number
          text={text.value}
          error={error.value}
          disabled={iron.session === null}
          onText={(typed) => {
            text.value = typed;
            error.value = '';
          }}
          onDone={done}
        />
        <Target disabled={iron.session === null} onPress={done}>
          {dialToldWords.say}
        </Target>
      </div>
      <p class="quiet">{dialToldWords.count}</p>
    </>
  );
}

function say({ id, name, session }: IronLive, mark: Mark): void {
  if (session === null) return;
  const words = commandWords.dial(name, mark === null ? dialToldWords.notSaid : String(mark));
  ask({ what: 'mark', iron: id, session, mark: { kind: 'dial', mark } }, words);
}
