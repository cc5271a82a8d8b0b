/** A key pressed without Ctrl, Alt or the like, which belong to the browser. */
export const isPlainKey = (event: KeyboardEvent): boolean =>
  !event.ctrlKey && !event.altKey && !event.metaKey && !event.defaultPrevented;
