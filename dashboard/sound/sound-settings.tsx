import type { ComponentChildren } from 'preact';
import { screenWords, soundWords } from '../../shared/words/sound.ts';
import { awake } from '../frame/awake.ts';
import { isLive, situation } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { choices, choicesKept, choose, type Loudness, loudnesses } from './choices.ts';
import type { OncePattern } from './patterns.ts';
import { alarmSounds, playOnce, soundState, turnOff, turnOn } from './sound.ts';
import './sound.css';

/** All that can be settled about the sound of this page, with how it stands. */
export const SoundSettings = () => (
  <details class="sound-settings" data-testid="sound-settings">
    <summary>{soundWords.title}</summary>
    <p>
      {soundWords.state[soundState.value]} {isLive.value ? pages() : null}{' '}
      {choicesKept.value ? null : soundWords.notKept}
    </p>
    {soundState.value === 'missing' ? null : <Choices />}
    <Screen />
  </details>
);

const pages = (): string => soundWords.pages(situation.value?.hearing.armedPages ?? 0);

const Choices = () => (
  <>
    <div class="choice-row">
      {choices.value.wanted ? (
        <Target onPress={turnOff}>{soundWords.turnOff}</Target>
      ) : (
        <Target onPress={turnOn}>{soundWords.turnOn}</Target>
      )}
    </div>
    <Row name={soundWords.test}>
      {(Object.keys(soundWords.tests) as OncePattern[]).map((name) => (
        <Target
          key={name}
          disabled={soundState.value !== 'on' || alarmSounds.value}
          testId={`try-${name}`}
          onPress={() => playOnce(name)}
        >
          {soundWords.tests[name]}
        </Target>
      ))}
    </Row>
    {soundState.value === 'on' && alarmSounds.value ? <p>{soundWords.testWaits}</p> : null}
    <Row name={soundWords.volume}>
      {(Object.keys(loudnesses) as Loudness[]).map((loudness) => (
        <Target
          key={loudness}
          chosen={choices.value.loudness === loudness}
          onPress={() => choose({ loudness })}
        >
          {soundWords.volumes[loudness]}
        </Target>
      ))}
    </Row>
    <Row name={soundWords.tick}>
      <Target chosen={choices.value.tick} onPress={() => choose({ tick: true })}>
        {soundWords.tickOn}
      </Target>
      <Target chosen={!choices.value.tick} onPress={() => choose({ tick: false })}>
        {soundWords.tickOff}
      </Target>
    </Row>
    <p>{soundWords.tickMeans}</p>
  </>
);

const Row = ({ name, children }: { readonly name: string; readonly children: ComponentChildren }) => (
  <div class="sound-row">
    <span aria-hidden="true">{name}</span>
    <div class="choice-row" role="group" aria-label={name}>
      {children}
    </div>
  </div>
);

function Screen() {
  const state = awake.value;
  if (state === 'asking') return null;
  return (
    <p data-testid="screen" data-state={state}>
      {state === 'awake'
        ? screenWords.awake
        : `${screenWords.maySleep} ${screenWords.why[state]} ${screenWords.instead}`}
    </p>
  );
}
