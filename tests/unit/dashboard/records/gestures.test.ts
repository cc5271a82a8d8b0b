import { expect, it } from 'vitest';
import { type Gestures, listenForGestures } from '../../../../dashboard/records/gestures.ts';

/** An element as far as gestures need one. */
class Surface extends EventTarget {
  setPointerCapture(): void {}
}

function listened() {
  const surface = new Surface();
  const said: unknown[][] = [];
  const gestures: Gestures = {
    dragging: (span) => said.push(['dragging', span]),
    chosen: (fromX, toX) => said.push(['chosen', fromX, toX]),
    tapped: (x) => said.push(['tapped', x]),
    pinched: (factor, x) => said.push(['pinched', factor, x]),
  };
  const end = listenForGestures(surface as unknown as HTMLElement, gestures);
  const send = (type: string, clientX: number, pointerId = 1, more: object = {}): void => {
    const event = new Event(type, { cancelable: true });
    surface.dispatchEvent(Object.assign(event, { clientX, pointerId, button: 0, ...more }));
  };
  return { said, send, end };
}

it('a press that goes nowhere is a tap', () => {
  const { said, send } = listened();
  send('pointerdown', 100);
  send('pointermove', 103);
  send('pointerup', 103);
  expect(said).toEqual([
    ['dragging', null],
    ['tapped', 103],
  ]);
});

it('a drag shows its span and chooses it at its end', () => {
  const { said, send } = listened();
  send('pointerdown', 100);
  send('pointermove', 160);
  send('pointerup', 180);
  expect(said).toEqual([
    ['dragging', { fromX: 100, toX: 160 }],
    ['dragging', null],
    ['chosen', 100, 180],
  ]);
});

it('a drag that the browser takes over chooses nothing', () => {
  const { said, send } = listened();
  send('pointerdown', 100);
  send('pointermove', 160);
  send('pointercancel', 180);
  expect(said.map(([what]) => what)).toEqual(['dragging', 'dragging']);
});

it('two fingers pinch about their middle, and end no drag with a choice', () => {
  const { said, send } = listened();
  send('pointerdown', 100, 1);
  send('pointerdown', 200, 2);
  send('pointermove', 300, 2);
  send('pointerup', 300, 2);
  send('pointerup', 100, 1);
  expect(said).toEqual([
    ['dragging', null],
    ['pinched', 0.5, 200],
  ]);
});

it('the wheel alone scrolls the page; with Ctrl, as a touchpad sends a pinch, it zooms', () => {
  const { said, send } = listened();
  send('wheel', 100, 1, { ctrlKey: false, deltaY: 200 });
  send('wheel', 100, 1, { ctrlKey: true, deltaY: 200 });
  expect(said).toEqual([['pinched', Math.E, 100]]);
});

it('nothing is heard after its end', () => {
  const { said, send, end } = listened();
  end();
  send('pointerdown', 100);
  send('pointerup', 100);
  expect(said).toEqual([]);
});
