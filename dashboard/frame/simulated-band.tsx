import { pageWords } from '../../shared/words/page.ts';
import { situation } from '../link/daemon.ts';
import { Hatch } from '../parts/hatch.tsx';

/** Says without a way to miss it that nothing here is real. */
export const SimulatedBand = () =>
  situation.value?.simulated === true ? (
    <section class="simulated" data-testid="simulated" aria-label={pageWords.simulated}>
      <Hatch name="simulated" />
      <p class="simulated-text">
        <strong>{pageWords.simulated}</strong> <span>{pageWords.simulatedMeans}</span>
      </p>
    </section>
  ) : null;
