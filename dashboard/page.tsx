import { Alarms } from './alarms/panel.tsx';
import { BenchPage } from './bench/bench-page.tsx';
import { ReadyNotes } from './coats/ready-notes.tsx';
import { Foot } from './frame/foot.tsx';
import { Header } from './frame/header.tsx';
import { view } from './frame/nav-view.ts';
import { Notes } from './frame/notes.tsx';
import { OutboxList } from './frame/outbox-list.tsx';
import { IronPage } from './iron/iron-view.tsx';
import { leadIron } from './iron/irons.ts';
import { isLive, situation } from './link/daemon.ts';
import { HatchPatterns } from './parts/hatch.tsx';
import { PiecePage } from './piece/piece-page.tsx';
import { RecordsPage } from './records/records-page.tsx';
import { Choice } from './setup/choice.tsx';
import { Nothing } from './setup/nothing.tsx';
import { SetupPage } from './setup/setup-page.tsx';
import { SoundNotes } from './sound/sound-line.tsx';
import './frame/frame.css';

/** The whole page. */
export const Page = () => (
  <>
    <HatchPatterns />
    <Alarms />
    <Header />
    <SoundNotes />
    <ReadyNotes />
    <main class="main" tabIndex={-1}>
      <Main />
    </main>
    <OutboxList />
    {leadIron.value === null || view.value !== 'iron' ? <Notes /> : null}
    <Foot />
  </>
);

function Main() {
  switch (view.value) {
    case 'iron':
      return <Irons />;
    case 'piece':
      return <PiecePage />;
    case 'bench':
      return <BenchPage />;
    case 'records':
      return <RecordsPage />;
    case 'setup':
      return <SetupPage />;
  }
}

/** A choice that waits can only be made while the daemon is heard. */
function Irons() {
  const now = situation.value;
  if (now === null) return null;
  if (now.choice !== null && isLive.value) return <Choice ports={now.choice} />;
  if (leadIron.value !== null) return <IronPage />;
  return isLive.value ? <Nothing devices={now.devices} /> : null;
}
