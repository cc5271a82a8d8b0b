import './parts/schemas.ts';
import { computed, effect } from '@preact/signals';
import { render } from 'preact';
import { listenForKeys } from './alarms/keys.ts';
import { followCoats } from './coats/coats.ts';
import { followVersion } from './frame/age.ts';
import { keepAwake } from './frame/awake.ts';
import { followAddress } from './frame/nav-view.ts';
import { iconAddress, titleText } from './frame/title.ts';
import { followRecent, hearRecent } from './iron/recent/follow.ts';
import { startSending } from './link/commands.ts';
import { followDaemon } from './link/daemon.ts';
import { reportPresence } from './link/presence.ts';
import { Page } from './page.tsx';
import { startClock } from './parts/now.ts';
import { followItems } from './records/book.ts';
import { followLook } from './setup/screen/look.ts';
import { watchUnits } from './setup/unit-question-note.tsx';
import { reportSound } from './sound/report.ts';
import { startSound } from './sound/sound.ts';
import './tokens.css';
import './base.css';

const place = document.querySelector('#page');
if (place !== null) render(<Page />, place);

const title = computed(titleText);
effect(() => {
  document.title = title.value;
});
const icon = computed(iconAddress);
effect(() => {
  document.querySelector('link[rel="icon"]')?.setAttribute('href', icon.value);
});
followLook();
followAddress();
startClock();
followRecent();
followItems();
followCoats();
followDaemon(hearRecent);
startSending();
followVersion();
listenForKeys();
startSound();
reportSound();
reportPresence();
watchUnits();
keepAwake();
