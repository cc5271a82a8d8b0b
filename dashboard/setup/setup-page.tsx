import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { setupWords } from '../../shared/words/setup.ts';
import { part } from '../frame/nav-view.ts';
import { isLive, viewOnly } from '../link/daemon.ts';
import { AirPart } from './air/air-part.tsx';
import { AlonePart } from './alone-part.tsx';
import { CementsPart } from './cement/cements-part.tsx';
import { followSettings, readTrouble, schedules } from './daemon-settings.ts';
import { DevicesPart } from './device/devices-part.tsx';
import { IronsPart } from './iron/irons-part.tsx';
import { Schedules } from './schedule/schedules.tsx';
import { ScreenPart } from './screen/screen-part.tsx';
import './setup.css';

const setupParts = ['schedules', 'cements', 'air', 'irons', 'devices', 'alone', 'screen'] as const;
type SetupPart = (typeof setupParts)[number];

const chosen = (): SetupPart => setupParts.find((one) => one === part.value) ?? 'schedules';

/** What can be settled, a part at a time. */
export function SetupPage() {
  useEffect(followSettings, []);
  const shown = chosen();
  return (
    <div class="setup" data-testid="setup" data-part={shown}>
      <nav class="setup-parts" aria-label={setupWords.parts}>
        {setupParts.map((one) => (
          <a
            key={one}
            class="target"
            href={`#setup/${one}`}
            aria-current={one === shown ? 'page' : undefined}
          >
            {setupWords[one]}
          </a>
        ))}
      </nav>
      <h2 class="setup-title">{setupWords[shown]}</h2>
      {viewOnly.value && shown !== 'screen' ? <p>{setupWords.viewOnly}</p> : null}
      <Part shown={shown} />
    </div>
  );
}

function Part({ shown }: { readonly shown: SetupPart }) {
  switch (shown) {
    case 'schedules':
      return (
        <FromDaemon>
          <Schedules />
        </FromDaemon>
      );
    case 'cements':
      return <CementsPart />;
    case 'air':
      return <AirPart />;
    case 'irons':
      return (
        <FromDaemon>
          <IronsPart />
        </FromDaemon>
      );
    case 'devices':
      return <DevicesPart />;
    case 'alone':
      return (
        <FromDaemon>
          <AlonePart />
        </FromDaemon>
      );
    case 'screen':
      return <ScreenPart />;
  }
}

/** What was read stays while the daemon is gone; before it was read there is nothing to show. */
const FromDaemon = ({ children }: { readonly children: ComponentChildren }) => (
  <>
    {readTrouble.value === '' || (isLive.value && schedules.value === null) ? null : (
      <p role="status">{setupWords.notRead(readTrouble.value)}</p>
    )}
    {schedules.value === null ? <p role="status">{setupWords.reading}</p> : children}
  </>
);
