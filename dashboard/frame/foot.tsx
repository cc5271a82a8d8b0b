import { keyWords } from '../../shared/words/page.ts';
import { workKeyWords } from '../../shared/words/pieces.ts';
import { safetyWords } from '../../shared/words/safety.ts';
import { answerKeys, keysOn, switchKeys, workKeys } from '../alarms/keys.ts';
import { viewOnly } from '../link/daemon.ts';
import { Target } from '../parts/target.tsx';
import { Devices } from '../setup/devices.tsx';
import { SoundSettings } from '../sound/sound-settings.tsx';
import { view } from './nav-view.ts';

/** The quiet part: cautions; and where they are not shown large, sound, keys, devices and their lines. */
export const Foot = () => (
  <footer class="foot">
    <p>
      {safetyWords.unattended} {safetyWords.vapour} {safetyWords.water}
    </p>
    <p>{safetyWords.decides}</p>
    {view.value === 'setup' ? null : (
      <>
        <SoundSettings />
        <Devices />
        {viewOnly.value ? null : <Keys />}
      </>
    )}
  </footer>
);

const Keys = () => (
  <details class="keys">
    <summary>{keyWords.title}</summary>
    <KeyList />
  </details>
);

/** The keys, and whether the single ones are on. */
export const KeyList = () => (
  <>
    <dl class="facts">
      <Key name={answerKeys.acknowledge} does={keyWords.acknowledge} />
      <Key name={answerKeys.silence} does={keyWords.silence} />
      <Key name={workKeys.next} does={workKeyWords.next} />
      <Key name={workKeys.turned} does={workKeyWords.turned} />
      <Key name={workKeys.lapDone} does={workKeyWords.lapDone} />
      <Key name={workKeys.onRest} does={workKeyWords.onRest} />
      <Key name={workKeys.undo} does={workKeyWords.undo} />
      <Key name={workKeyWords.arrowKeys} does={workKeyWords.arrows} />
      <Key name="Tab" does={keyWords.tab} />
    </dl>
    <Target chosen={keysOn.value} onPress={() => switchKeys(!keysOn.value)}>
      {keysOn.value ? keyWords.on : keyWords.off}
    </Target>
  </>
);

const Key = ({ name, does }: { readonly name: string; readonly does: string }) => (
  <>
    <dt>
      <kbd>{name.length === 1 ? name.toUpperCase() : name}</kbd>
    </dt>
    <dd>{does}</dd>
  </>
);
