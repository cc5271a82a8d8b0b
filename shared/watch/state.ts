/** placeholder, replaced below */
export interface WatchState {
  readonly placeholder: true;
}
