import type { Cement } from '../../shared/cure/cement.ts';
import { coatWords } from '../../shared/words/coats.ts';
import { isExpired } from '../cure/cements.ts';
import { today } from '../cure/clock.ts';

/** What speaks against putting a cement on, where it is chosen. */
export const CementDoubts = ({ cement }: { readonly cement: Cement }) => (
  <>
    {cement.source === null ? <small>{coatWords.unconfirmed}</small> : null}
    {isExpired(cement, today.value) ? <small>{coatWords.expired}</small> : null}
  </>
);
