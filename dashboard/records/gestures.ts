/** What fingers and the mouse do on a trace: dragging chooses a span, two fingers pinch, a tap points at a finding. */
export interface Gestures {
  /** A span is being dragged over: its two ends as places of the window; null once it is over. */
  dragging(span: { readonly fromX: number; readonly toX: number } | null): void;
  /** A span was chosen. */
  chosen(fromX: number, toX: number): void;
  tapped(x: number): void;
  /** Two fingers went `factor` times as far apart, about a place. */
  pinched(factor: number, x: number): void;
}

/** A shorter way than this is a tap, CSS pixels. */
const TAP_PX = 8;

/** Listens on an element until the function that it returns is called. */
export function listenForGestures(element: HTMLElement, gestures: Gestures): () => void {
  const down = new Map<number, number>();
  let fromX: number | null = null;
  const apart = (): number => {
    const [one = 0, other = 0] = down.values();
    return Math.max(1, Math.abs(one - other));
  };
  const middle = (): number => [...down.values()].reduce((sum, x) => sum + x, 0) / down.size;
  const endDrag = (): void => {
    fromX = null;
    gestures.dragging(null);
  };
  const pressed = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    down.set(event.pointerId, event.clientX);
    if (down.size === 1) fromX = event.clientX;
    else endDrag();
  };
  const movedTo = (event: PointerEvent): void => {
    if (!down.has(event.pointerId)) return;
    const before = apart();
    down.set(event.pointerId, event.clientX);
    if (down.size === 2) gestures.pinched(before / apart(), middle());
    else if (fromX !== null && Math.abs(event.clientX - fromX) >= TAP_PX)
      gestures.dragging({ fromX, toX: event.clientX });
  };
  const released = (event: PointerEvent): void => {
    if (!down.delete(event.pointerId) || fromX === null) return;
    const from = fromX;
    endDrag();
    if (event.type === 'pointercancel') return;
    if (Math.abs(event.clientX - from) < TAP_PX) gestures.tapped(event.clientX);
    else gestures.chosen(from, event.clientX);
  };
  const wheeled = (event: WheelEvent): void => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    gestures.pinched(Math.exp(event.deltaY / 200), event.clientX);
  };
  element.addEventListener('pointerdown', pressed);
  element.addEventListener('pointermove', movedTo);
  element.addEventListener('pointerup', released);
  element.addEventListener('pointercancel', released);
  element.addEventListener('wheel', wheeled, { passive: false });
  return () => {
    element.removeEventListener('pointerdown', pressed);
    element.removeEventListener('pointermove', movedTo);
    element.removeEventListener('pointerup', released);
    element.removeEventListener('pointercancel', released);
    element.removeEventListener('wheel', wheeled);
  };
}
