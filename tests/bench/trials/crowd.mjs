// Many clients of a stream in one process: notes when each message comes and looks into it only afterwards.
import { listen } from '../parts/listen.mjs';
import { monotonicMs } from '../parts/pace.mjs';

let noting = false;
const noted = [];

const note = (data) => {
  if (noting) noted.push({ atMs: monotonicMs(), data });
};

const valuesOf = ({ atMs, data }) => {
  const message = JSON.parse(data);
  return message.kind === 'readings' ? message.probes.map(({ plateC }) => ({ value: plateC, atMs })) : [];
};

process.on('disconnect', () => process.exit());
process.on('message', async (message) => {
  switch (message) {
    case 'begin':
      noting = true;
      break;
    case 'end':
      noting = false;
      process.send(noted.flatMap(valuesOf));
      break;
    default:
      for (let i = 0; i < message.clients; i += 1) await listen(message.address, note);
      process.send('connected');
  }
});
