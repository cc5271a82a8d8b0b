import { computed, signal } from '@preact/signals';

/** Which view is shown: the address says it, so that the browser's own back, links and marks work. */

export const views = ['iron', 'piece', 'bench', 'records', 'setup'] as const;
export type View = (typeof views)[number];

const hash = signal(location.hash);

/** The parts of the address behind "#", for example `setup` and `devices`. */
const parts = computed(() => hash.value.replace(/^#/, '').split('/'));

export const view = computed<View>(() => views.find((one) => one === parts.value[0]) ?? 'iron');

/** What the address says behind the view; empty where nothing. */
export const part = computed(() => parts.value[1] ?? '');

/** What it says behind that. */
export const detail = computed(() => parts.value[2] ?? '');

/** Follows the address from now on, and moves the focus to what it leads to, as following a link does. */
export function followAddress(): void {
  window.addEventListener('hashchange', () => {
    hash.value = location.hash;
    requestAnimationFrame(toTop);
  });
}

function toTop(): void {
  window.scrollTo(0, 0);
  document.querySelector<HTMLElement>('main')?.focus({ preventScroll: true });
}
