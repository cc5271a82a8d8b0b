// npm start: makes the checkout ready, then becomes the program.
import { build, checkNode, install } from './ready.mjs';

checkNode();
install();
build();
await import('../build/daemon/main.js');
