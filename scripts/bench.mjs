// npm run bench: makes the checkout ready and measures. Arguments go to the bench; --help tells them.
import { build, checkNode, install } from './ready.mjs';

checkNode();
install();
build();
const { bench } = await import('../tests/bench/run.mjs');
try {
  await bench(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
