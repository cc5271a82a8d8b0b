import type { DeviceLive } from '../../shared/messages/live.ts';
import { pageWords } from '../../shared/words/page.ts';
import { deviceWords, rejectWords } from '../../shared/words/source.ts';
import { situation } from '../link/daemon.ts';
import { Opening } from '../parts/opening.tsx';
import './setup.css';

/** Each device with the state of its lines: what was used, what was not and why. Quiet; for when something is wrong. */
export const Devices = () => (
  <Opening class="devices" testId="devices" summary={deviceWords.title}>
    {() => <DeviceList />}
  </Opening>
);

function DeviceList() {
  const devices = situation.value?.devices ?? [];
  if (devices.length === 0) return <p>{deviceWords.none}</p>;
  return (
    <>
      {devices.map((device) => (
        <Device key={device.id} device={device} />
      ))}
    </>
  );
}

const Device = ({ device }: { readonly device: DeviceLive }) => (
  <div class="device">
    <h2>
      {device.path}: {deviceWords.link[device.link]}{' '}
      {device.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
    </h2>
    {device.detail === '' ? null : <p>{device.detail}</p>}
    <DeviceFacts device={device} />
  </div>
);

/** What came over a device's line, by what became of it. */
export const DeviceFacts = ({ device }: { readonly device: DeviceLive }) => (
  <>
    <dl class="facts">
      <dt>{deviceWords.accepted}</dt>
      <dd>{device.linesAccepted}</dd>
      <dt>{deviceWords.missed}</dt>
      <dd>{device.samplesMissed}</dd>
      <dt>{deviceWords.lastLine}</dt>
      <dd>
        <code>{device.lastLine === '' ? deviceWords.noLine : device.lastLine}</code>
      </dd>
      <dt>{deviceWords.rejected}</dt>
      <dd>{device.rejected.length === 0 ? deviceWords.rejectedNone : <Rejected device={device} />}</dd>
    </dl>
    {device.linesAccepted === 0 ? null : (
      <p>{device.checksummed ? deviceWords.checked : deviceWords.unchecked}</p>
    )}
  </>
);

const Rejected = ({ device }: { readonly device: DeviceLive }) => (
  <ul class="rejected">
    {device.rejected.map(({ cause, count, lastRaw }) => (
      <li key={cause} data-cause={cause}>
        {count} × {rejectWords[cause] ?? cause}; {deviceWords.lastRaw}: <code>{lastRaw}</code>
      </li>
    ))}
  </ul>
);
