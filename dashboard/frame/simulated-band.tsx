import { pageWords } from '../../shared/words/page.ts';
import { live } from '../link/daemon.ts';
import { Hatch } from '../parts/hatch.tsx';

/** Says without a way to miss it that nothing here is real. */
export const SimulatedBand = () =>
  live.value?.situation.simulated === true ? (
    <section class="simulated" data-testid="simulated" aria-label={pageWords.simulated}>
      <Hatch name="simulated" />
      <p class="simulated-text">
        <strong>{pageWords.simulated}</strong> <span>{pageWords.simulatedMeans}</span>
      </p>
    </section>
  ) : null;
