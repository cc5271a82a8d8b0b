import type { Signal } from '@preact/signals';
import type { z } from 'zod';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';

/** Settings of which each save makes a new version: what a page has to know of them to change them. */

export interface Versioned {
  readonly id: string;
  /** 0: it does not exist yet. */
  readonly version: number;
}

/** A form whose temperatures are in one unit. */
export interface UnitForm {
  readonly unit: TemperatureUnit;
}

export interface Draft<T, F> {
  /** The version that it was made from; one that does not exist yet has version 0. */
  readonly base: T;
  readonly form: F;
}

/** Whether a form can be saved: the values it stands for, or what is wrong, each beside its field. */
export interface Checked<V> {
  /** Null while anything is wrong. */
  readonly values: V | null;
  /** By the key of the place, what would be right; `whole`: of the form as such. */
  readonly errors: ReadonlyMap<string, string>;
}

export interface Merge<F, P> {
  /** Their version with all that I changed. */
  readonly form: F;
  /** What they changed and I did not: it is in the merged form. */
  readonly theirs: readonly P[];
  /** What both changed, not alike: the merged form has mine. */
  readonly both: readonly P[];
}

/** One kind of setting: `V` are its values, `T` a version of them, `F` their form, `P` a place in the form. */
export interface Kind<T extends Versioned & V, V extends object, F extends UnitForm, P> {
  /** The name under which the tab keeps what is typed. */
  readonly keptAs: string;
  readonly draftSchema: z.ZodType<Draft<T, F>>;
  readonly schema: z.ZodType<T>;
  readonly path: (id: string) => string;
  /** The newest version of each, as read last. */
  readonly all: Signal<readonly T[] | null>;
  /** Reads them again. */
  readonly read: () => Promise<void>;
  readonly formOf: (values: V, unit: TemperatureUnit) => F;
  readonly inUnit: (form: F, unit: TemperatureUnit) => F;
  readonly check: (form: F) => Checked<V>;
  /** Puts my changes on top of theirs; both were made from `base`. */
  readonly merge: (base: F, mine: F, theirs: F) => Merge<F, P>;
  /** What is said once a version is saved. */
  readonly saved: (version: number) => string;
}
