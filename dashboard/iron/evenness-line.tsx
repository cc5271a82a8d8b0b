import { evennessWords } from '../../shared/words/evenness.ts';
import { evennessText } from '../evenness/evenness-text.ts';
import { difference } from '../parts/unit.ts';
import type { IronView } from './plate.ts';

/** How evenly the plate is hot, where two probes or typed spots tell; and what its limits count for that. */
export function EvennessLine({ view: { iron, plates } }: { readonly view: IronView }) {
  const { evenness } = iron;
  if (evenness === null) return null;
  const labelOf = (id: string): string => plates.find((p) => p.id === id)?.probe?.label ?? id;
  const overK = plates[0].probe?.overK ?? 0;
  return (
    <p class="quiet" data-testid="evenness">
      {evennessText(evenness, labelOf, difference)}
      {overK > 0 ? ` ${evennessWords.limitsCount(difference(overK))}` : ''}
    </p>
  );
}
