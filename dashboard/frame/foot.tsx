import { keyWords } from '../../shared/words/page.ts';
import { safetyWords } from '../../shared/words/safety.ts';
import { answerKeys, keysOn, switchKeys } from '../alarms/keys.ts';
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
      <dt>
        <kbd>{answerKeys.acknowledge.toUpperCase()}</kbd>
      </dt>
      <dd>{keyWords.acknowledge}</dd>
      <dt>
        <kbd>{answerKeys.silence.toUpperCase()}</kbd>
      </dt>
      <dd>{keyWords.silence}</dd>
      <dt>
        <kbd>Tab</kbd>
      </dt>
      <dd>{keyWords.tab}</dd>
    </dl>
    <Target chosen={keysOn.value} onPress={() => switchKeys(!keysOn.value)}>
      {keysOn.value ? keyWords.on : keyWords.off}
    </Target>
  </>
);
