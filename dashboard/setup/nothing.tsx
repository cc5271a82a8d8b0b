import type { DeviceLive } from '../../shared/messages/live.ts';
import { deviceWords } from '../../shared/words/source.ts';
import { ironWords } from '../../shared/words/standing.ts';
import { diagnosis } from './device/diagnosis.ts';
import './setup.css';

/** No iron to show: what is missing, and what to do about it. */
export function Nothing({ devices }: { readonly devices: readonly DeviceLive[] }) {
  return (
    <section class="nothing" data-testid="nothing" aria-labelledby="nothing-title">
      <h2 id="nothing-title" class="choice-title">
        {devices.length === 0 ? deviceWords.none : ironWords.nothingWatched}
      </h2>
      {devices.length === 0 ? <p>{deviceWords.noneAction}</p> : null}
      {devices.map((device) => (
        <DeviceState key={device.id} device={device} />
      ))}
    </section>
  );
}

/** Why there is no number of it: what is wrong with its lines, or that nothing in them is of a plate. */
function DeviceState({ device }: { readonly device: DeviceLive }) {
  const { link, path } = device;
  const { well, sentences } = diagnosis(device);
  const waits = well && link === 'connected';
  return (
    <>
      <p>
        <strong>{link === 'lost' ? `${deviceWords.lost}: ${path}.` : `${path}:`}</strong>{' '}
        {[...sentences, ...(waits ? [deviceWords.noPlate] : [])].join(' ')}
      </p>
      {link === 'connected' ? (
        <p>
          <a class="way" href="#setup/devices">
            {deviceWords.toDevices}
          </a>
        </p>
      ) : null}
    </>
  );
}
