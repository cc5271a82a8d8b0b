import type { DeviceLive } from '../../shared/messages/live.ts';
import { deviceWords } from '../../shared/words/source.ts';
import { ironWords } from '../../shared/words/standing.ts';
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

function DeviceState({ device: { link, path, detail } }: { readonly device: DeviceLive }) {
  if (link === 'lost') {
    return (
      <p>
        <strong>
          {deviceWords.lost}: {path}.
        </strong>{' '}
        {detail === '' ? deviceWords.lostAction : detail}
      </p>
    );
  }
  return (
    <p>
      <strong>{path}:</strong> {link === 'starting' ? deviceWords.link.starting : ironWords.awaitingLine}.{' '}
      {detail}
    </p>
  );
}
