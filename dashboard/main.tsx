import './parts/schemas.ts';
import { effect } from '@preact/signals';
import { render } from 'preact';
import { listenForKeys } from './alarms/keys.ts';
import { followVersion } from './frame/age.ts';
import { titleText } from './frame/title.ts';
import { startSending } from './link/commands.ts';
import { followDaemon } from './link/daemon.ts';
import { Page } from './page.tsx';
import { startClock } from './parts/now.ts';
import './tokens.css';
import './base.css';

const place = document.querySelector('#page');
if (place !== null) render(<Page />, place);

effect(() => {
  document.title = titleText();
});
startClock();
followDaemon();
startSending();
followVersion();
listenForKeys();
