import { protocolForm } from '../../../shared/messages/line-form.ts';
import type { DeviceLive } from '../../../shared/messages/live.ts';
import { deviceOf } from '../../../shared/thermometer/sample.ts';
import { pageWords } from '../../../shared/words/page.ts';
import { deviceSetupWords, ironSetupWords } from '../../../shared/words/setup.ts';
import { deviceWords } from '../../../shared/words/source.ts';
import { isLive, situation, viewOnly } from '../../link/daemon.ts';
import { Note } from '../../parts/note.tsx';
import { nameDevice } from '../changing.ts';
import { Choice } from '../choice.tsx';
import { devicesSettled, probes } from '../daemon-settings.ts';
import { DeviceFacts } from '../devices.tsx';
import { KeptField, nameCheck } from '../fields/kept-field.tsx';
import { SaidLine } from '../said-line.tsx';
import { diagnosis } from './diagnosis.ts';
import { formDrafts } from './form/form-drafts.ts';
import { LineFormPart } from './form/line-form-part.tsx';

/** Devices: how each stands and what to do about it, what came over its line, and the choice while it is open. */
export function DevicesPart() {
  const now = situation.value;
  if (now === null) return null;
  const { choice, devices } = now;
  return (
    <>
      {choice !== null && isLive.value ? <Choice ports={choice} /> : null}
      {devices.length === 0 && choice === null ? (
        <Note hatch="missing">
          <p>
            <strong>{deviceSetupWords.none}.</strong> {deviceSetupWords.noneAction}
          </p>
        </Note>
      ) : null}
      <ul class="cards">
        {devices.map((device) => (
          <DeviceCard key={device.id} device={device} />
        ))}
      </ul>
      {choice === null && devices.length > 0 ? <p class="quiet">{deviceSetupWords.another}</p> : null}
    </>
  );
}

function DeviceCard({ device }: { readonly device: DeviceLive }) {
  const { id, path, hello } = device;
  const settled = devicesSettled.value?.find((one) => one.id === id);
  const name = settled?.name ?? '';
  const isOpen = formDrafts.value[id] !== undefined;
  const on = (probes.value ?? []).filter((one) => deviceOf(one.id) === id).map((one) => one.label);
  return (
    <li class={isOpen ? 'card card--wide' : 'card'} data-testid="device-card" data-id={id}>
      <h3>
        {name === '' ? path : name}: {deviceWords.link[device.link]}{' '}
        {device.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
      </h3>
      <State device={device} />
      <KeptField
        id={`device-${id}`}
        label={deviceSetupWords.name}
        now={name}
        check={nameCheck(60, true)}
        keep={(text) =>
          nameDevice(
            id,
            text.trim(),
            text.trim() === '' ? ironSetupWords.unnamed : ironSetupWords.renamed(text.trim()),
          )
        }
        disabled={viewOnly.value}
      />
      <SaidLine subject={`device ${id}`} />
      <dl class="facts">
        <dt>{deviceSetupWords.path}</dt>
        <dd>
          <code>{path}</code>
        </dd>
        <dt>{deviceSetupWords.id}</dt>
        <dd>
          <code>{id}</code>
        </dd>
        <dt>{deviceSetupWords.says}</dt>
        <dd>{helloText(hello)}</dd>
        <dt>{deviceSetupWords.probes}</dt>
        <dd>{on.length === 0 ? deviceSetupWords.probesNone : on.join(', ')}</dd>
      </dl>
      <DeviceFacts device={device} />
      {device.simulated ? null : <LineFormPart id={id} inUse={settled?.form ?? protocolForm} />}
    </li>
  );
}

const helloText = (hello: DeviceLive['hello']): string =>
  hello === null
    ? deviceSetupWords.saysNothing
    : Object.entries(hello)
        .map(([key, value]) => `${key} ${value}`)
        .join(', ');

function State({ device }: { readonly device: DeviceLive }) {
  const { well, sentences } = diagnosis(device);
  const text = sentences.join(' ');
  return well ? (
    <p data-testid="device-state">{text}</p>
  ) : (
    <Note hatch="missing" testId="device-state">
      {text}
    </Note>
  );
}
