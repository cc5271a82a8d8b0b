import { createRef } from 'preact';
import { soundWords } from '../../shared/words/sound.ts';
import { isLive, situation } from '../link/daemon.ts';
import { useFocusKept } from '../parts/focus-kept.ts';
import { Hatch } from '../parts/hatch.tsx';
import { Note } from '../parts/note.tsx';
import { Target } from '../parts/target.tsx';
import { alarmSounds, plan, quietWhileLost, soundState, turnOn } from './sound.ts';
import './sound.css';

/** What stands in the place of what was pressed, once sound runs. */
const soundOn = createRef<HTMLSpanElement>();

/** How this page's sound stands: off and hatched until it is turned on. Always in sight. */
export function SoundLine() {
  useFocusKept(soundState.value, soundOn);
  return (
    <div
      class="sound-line"
      role="group"
      aria-label={soundWords.name}
      data-testid="sound"
      data-state={soundState.value}
      data-sounding={plan.value.pattern ?? ''}
    >
      <SoundNow />
    </div>
  );
}

function SoundNow() {
  switch (soundState.value) {
    case 'on':
      return (
        <span class="sound-on" ref={soundOn} tabIndex={-1}>
          {soundWords.on}
        </span>
      );
    case 'missing':
      return (
        <span class="sound-off">
          <HatchedEdge />
          <b>{soundWords.missing}</b>
        </span>
      );
    case 'off':
      return <TurnOn name={soundWords.off} does={soundWords.turnOn} />;
    case 'stopped':
      return <TurnOn name={soundWords.stopped} does={soundWords.resume} />;
  }
}

const HatchedEdge = () => (
  <span class="sound-edge">
    <Hatch name="missing" />
  </span>
);

const TurnOn = ({ name, does }: { readonly name: string; readonly does: string }) => (
  <button type="button" class="target sound-off" aria-label={`${name}. ${does}`} onClick={turnOn}>
    <HatchedEdge />
    <b>
      {name} <small>{does}</small>
    </b>
  </button>
);

/** What must be known of sound on every page: that an alarm would go unheard, or why this page sounds. */
export const SoundNotes = () => (
  <div class="notes sound-notes" role="status">
    {isLive.value && situation.value?.hearing.unheard === true ? <Unheard /> : null}
    {plan.value.causes.includes('lost') ? <Lost /> : null}
  </div>
);

function Unheard() {
  useFocusKept(soundState.value, soundOn);
  return (
    <Note hatch="act-soon" testId="unheard">
      <span>
        <strong>{soundWords.unheardTitle}</strong> {soundWords.unheard}
      </span>
      {soundState.value === 'off' || soundState.value === 'stopped' ? (
        <Target onPress={turnOn}>{soundWords.turnOn}</Target>
      ) : null}
    </Note>
  );
}

const Lost = () => (
  <Note hatch="act-soon" testId="lost-sound">
    <span>{soundWords.lost}</span>
    {alarmSounds.value ? <Target onPress={quietWhileLost}>{soundWords.quiet}</Target> : null}
  </Note>
);
